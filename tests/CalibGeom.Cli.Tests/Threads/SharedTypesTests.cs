using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace CalibGeom.Cli.Tests.Threads;

/// <summary>
/// Every type whose documentation says that it may be shared between threads is asked from eight threads at once, a
/// new object each time; a type that says so and is not asked here fails.
/// </summary>
public partial class SharedTypesTests
{
    private const int Threads = 8,
        Rounds = 4;

    public static TheoryData<string> Claimed => [.. Claims()];

    [Theory]
    [MemberData(nameof(Claimed))]
    public void WhatMayBeSharedAnswersAllAlike(string type)
    {
        SharedUse[] uses = [.. SharedUses.All.Where(u => u.Type.FullName == type)];
        Assert.True(uses.Length > 0, $"{type} says that it may be shared: add what to ask of it to SharedUses");
        foreach (SharedUse use in uses)
        {
            string alone = use.Told(use.Make());
            Assert.NotEmpty(alone);
            for (int round = 0; round < Rounds; round++)
                Assert.All(AskedAtOnce(use, use.Make()), told => Assert.Equal(alone, told));
        }
    }

    [Fact]
    public void WhatIsAskedHereSaysThatItMayBeShared()
    {
        string[] claimed = [.. Claims()];
        Assert.True(claimed.Length >= 35, $"{claimed.Length} types");
        Assert.Empty(SharedUses.All.Select(u => u.Type.FullName!).Except(claimed));
    }

    private static string[] AskedAtOnce(SharedUse use, object shared)
    {
        var told = new string[Threads];
        using var together = new Barrier(Threads);
        Thread[] threads =
        [
            .. Enumerable
                .Range(0, Threads)
                .Select(i => new Thread(() =>
                {
                    together.SignalAndWait();
                    try
                    {
                        told[i] = use.Told(shared);
                    }
                    catch (Exception e)
                    {
                        told[i] = e.ToString();
                    }
                })),
        ];
        Array.ForEach(threads, t => t.Start());
        Array.ForEach(threads, t => t.Join());
        return told;
    }

    /// <summary>The types that claim it in the documentation that stands beside their assemblies.</summary>
    private static IEnumerable<string> Claims() =>
        Directory
            .GetFiles(AppContext.BaseDirectory, "CalibGeom*.xml")
            .Where(f => !f.EndsWith("Tests.xml", StringComparison.Ordinal))
            .SelectMany(f => XDocument.Load(f).Descendants("member"))
            .Where(m => ((string)m.Attribute("name")!).StartsWith("T:", StringComparison.Ordinal))
            .Where(m => Claim().IsMatch(Space().Replace(m.Value, " ")))
            .Select(m => ((string)m.Attribute("name")!)[2..])
            .Order(StringComparer.Ordinal);

    [GeneratedRegex("(?<![Nn]ot )[Ss]afe to (share between|use from several) threads")]
    private static partial Regex Claim();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Space();
}
