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
        string[] rows =
        [
            .. File.ReadAllLines(Path.Combine(Repository.Root, "docs/limits.md"))
                .Where(l => l.StartsWith("| ", StringComparison.Ordinal))
                .Where(l => l.EndsWith("` |", StringComparison.Ordinal))
                .Select(l => Array.ConvertAll(l.Split('|'), c => c.Trim()))
                .Select(cells => $"{cells[4].Trim('`')} {cells[3]}"),
        ];
        string[] limits =
        [
            .. typeof(ReaderLimits)
                .GetFields(BindingFlags.Public | BindingFlags.Static)
                .Select(f =>
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"{f.Name} {Convert.ToInt64(f.GetRawConstantValue(), CultureInfo.InvariantCulture):N0}"
                    )
                ),
        ];
        Assert.Equal(limits.Order(StringComparer.Ordinal), rows.Order(StringComparer.Ordinal));
    }
}
