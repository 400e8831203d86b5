using System.Globalization;
using System.Reflection;
using CalibGeom.Features.Files;

namespace CalibGeom.Features.Tests.Files;

/// <summary>The table of docs/limits.md has every limit, and no other.</summary>
public class ReaderLimitsTests
{
    [Fact]
    public void ThePageHasEveryLimit()
    {
        string[] rows = File.ReadAllLines(Path.Combine(Repository.Root, "docs/limits.md"))
            .Where(l => l.StartsWith("| ", StringComparison.Ordinal))
            .Skip(1)
            .Select(l => l.Split('|')[3].Trim())
            .ToArray();
        string[] values = typeof(ReaderLimits)
            .GetFields(BindingFlags.Public | BindingFlags.Static)
            .Select(f => Convert.ToInt64(f.GetRawConstantValue(), CultureInfo.InvariantCulture))
            .Select(v => v.ToString("N0", CultureInfo.InvariantCulture))
            .ToArray();
        Assert.Equal(values.Order(StringComparer.Ordinal), rows.Order(StringComparer.Ordinal));
    }
}
