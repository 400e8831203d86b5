using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Tests.TestObjects;

/// <summary>Sizes are preferred numbers. The series are those of ISO 3, as read in CHECKS.md section 2.</summary>
public class PreferredNumberTests
{
    private static readonly double[] R5 = [1.00, 1.60, 2.50, 4.00, 6.30];
    private static readonly double[] R10 = [1.00, 1.25, 1.60, 2.00, 2.50, 3.15, 4.00, 5.00, 6.30, 8.00];

    private static readonly double[] R20 =
    [
        1.00,
        1.12,
        1.25,
        1.40,
        1.60,
        1.80,
        2.00,
        2.24,
        2.50,
        2.80,
        3.15,
        3.55,
        4.00,
        4.50,
        5.00,
        5.60,
        6.30,
        7.10,
        8.00,
        9.00,
    ];

    public static TheoryData<string> PresetNames => [.. Presets.All.Select(p => p.Name)];

    [Fact]
    public void TheSeriesAreNearTheirPowersAndNested()
    {
        // Deviations of the published values from 10^(k/n): COMPUTED there, -0.47 to +0.95 % (R5), -0.71 to +0.95 %
        // (R10), -0.89 to +1.22 % (R20).
        AssertNearPowers(R5, -0.0047, 0.0095);
        AssertNearPowers(R10, -0.0071, 0.0095);
        AssertNearPowers(R20, -0.0089, 0.0122);
        Assert.Subset(R10.ToHashSet(), R5.ToHashSet());
        Assert.Subset(R20.ToHashSet(), R10.ToHashSet());
    }

    [Theory]
    [MemberData(nameof(PresetNames))]
    public void SizesColumnsAndSlotsAreR20(string name)
    {
        TestObjectSpec spec = Presets.Find(name)!.Spec;
        IEnumerable<double> sizes =
        [
            .. spec.Nest!.Sizes,
            spec.Nest.GaugeBand,
            spec.Nest.PocketDepth,
            spec.Plinth.Thickness,
            spec.Plinth.EdgeChamfer,
            .. spec.Spans is { } s ? [s.X, s.Y] : Array.Empty<double>(),
            .. spec.Columns is { } c ? [.. c.Diameters, c.Height, c.HeadDiameter, c.Pitch] : Array.Empty<double>(),
            .. spec.Slots?.Heights ?? [],
            .. spec.Squeeze is { } q ? [.. q.Heights, q.Bar] : Array.Empty<double>(),
            .. spec.Labels is { } l ? [l.Height, l.Stroke] : Array.Empty<double>(),
        ];
        Assert.All(sizes, size => Assert.True(IsIn(R20, size), FormattableString.Invariant($"{size} is not in R20")));
    }

    [Fact]
    public void SeriesAreWhatTheyAreSaidToBe()
    {
        var standard = new TestObjectSpec();
        Assert.Equal([0, 3, 6], standard.Nest!.Sizes.Select(s => Index(R20, s) - Index(R20, 8.0)));
        Assert.Equal(
            Enumerable.Range(0, 11),
            standard.Columns!.Diameters.Select(d => Index(R20, d) - Index(R20, 0.25))
        );
        Assert.Equal(Enumerable.Range(0, 8), standard.Slots!.Heights.Select(h => Index(R10, h) - Index(R10, 0.16)));
    }

    private static void AssertNearPowers(double[] series, double low, double high) =>
        Assert.All(
            series.Select((value, k) => value / Math.Pow(10, (double)k / series.Length) - 1),
            d => Assert.InRange(d, low - 5e-5, high + 5e-5)
        );

    private static bool IsIn(double[] series, double value) => series.Any(s => Math.Abs(s - Mantissa(value)) < 1e-9);

    /// <summary>The place in the endless series: 0 at 1, as many to a decade as the series has.</summary>
    private static int Index(double[] series, double value) =>
        (int)Math.Floor(Math.Log10(value) + 1e-12) * series.Length
        + Array.FindIndex(series, s => Math.Abs(s - Mantissa(value)) < 1e-9);

    private static double Mantissa(double value) => value / Math.Pow(10, Math.Floor(Math.Log10(value) + 1e-12));
}
