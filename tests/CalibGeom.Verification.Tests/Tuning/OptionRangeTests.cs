using CalibGeom.Verification.Tuning;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Tests.Tuning;

/// <summary>
/// Options that exist are valid: each value is taken at the ends of its range and refused just outside.
/// </summary>
public class OptionRangeTests
{
    private const double Above0 = double.Epsilon;

    private static readonly Dictionary<string, (double Least, double Most, Func<double, object> Set)> Ranges = new(
        StringComparer.Ordinal
    )
    {
        ["Target"] = (-1, 2, v => new TuneOptions { Target = v }),
        ["Tolerance"] = (Above0, 1, v => new TuneOptions { Tolerance = v }),
        ["Probability"] = (0.5, 0.999, v => new TuneOptions { Probability = v }),
        ["Visible"] = (Above0, 1, v => new TuneOptions { Visible = v }),
        ["WantedColumn"] = (Above0, 20, v => new TuneOptions { WantedColumn = v }),
        ["LeastLayers"] = (Above0, 100, v => new TuneOptions { LeastLayers = v }),
        ["ColumnGain"] = (Above0, 1, v => new TuneOptions { ColumnGain = v }),
        ["MostPrintThrough"] = (Above0, 20, v => new TuneOptions { MostPrintThrough = v }),
        ["MostSlower"] = (0, 10, v => new TuneOptions { MostSlower = v }),
        ["MostTime"] = (Above0, 600, v => new TuneOptions { MostTime = v }),
        ["RestGain"] = (Above0, 1, v => new TuneOptions { RestGain = v }),
        ["MostRest"] = (0, 60, v => new TuneOptions { MostRest = v }),
        ["MostRestStep"] = (0, 60, v => new TuneOptions { MostRestStep = v }),
        ["LeastStep"] = (0, 0.5, v => new TuneOptions { LeastStep = v }),
        ["MostUp"] = (0.01, 2, v => new TuneOptions { MostUp = v }),
        ["MostDown"] = (0.01, 0.9, v => new TuneOptions { MostDown = v }),
        ["TimeStep"] = (Above0, 10, v => new TuneOptions { TimeStep = v }),
        ["RestStep"] = (Above0, 10, v => new TuneOptions { RestStep = v }),
        ["OffsetStep"] = (Above0, 1, v => new TuneOptions { OffsetStep = v }),
        ["Pixel"] = (0.005, 0.5, v => new TuneOptions { Pixel = v }),
        ["ProductionHeight"] = (Above0, 1000, v => new TuneOptions { ProductionHeight = v }),
        ["Modulus"] = (Above0, 100000, v => new TuneOptions { Modulus = v }),
        ["ColumnHeight"] = (Above0, 500, v => new TuneOptions { ColumnHeight = v }),
        ["GrowthMean"] = (-1, 1, v => new ExposurePriors { GrowthMean = v }),
        ["GrowthDeviation"] = (Above0, 1, v => new ExposurePriors { GrowthDeviation = v }),
        ["LackOfFit"] = (Above0, 1, v => new ExposurePriors { LackOfFit = v }),
        ["AxisDifference"] = (Above0, 1, v => new ExposurePriors { AxisDifference = v }),
        ["ColumnExponent"] = (0, 5, v => new ExposurePriors { ColumnExponent = v }),
        ["ColumnExponentDeviation"] = (Above0, 5, v => new ExposurePriors { ColumnExponentDeviation = v }),
        ["LightDrift"] = (0, 1, v => new ExposurePriors { LightDrift = v }),
        ["Trials"] = (1000, 1e8, v => new MonteCarloOptions { Trials = (int)v }),
        ["Digits"] = (1, 2, v => new MonteCarloOptions { Digits = (int)v }),
        ["MostTrials"] = (20_000, 1e8, v => new MonteCarloOptions { MostTrials = (int)v }),
        ["MonteCarlo probability"] = (0.01, 0.9999, v => new MonteCarloOptions { Probability = v }),
    };

    public static TheoryData<string> Names => new(Ranges.Keys);

    [Theory]
    [MemberData(nameof(Names))]
    public void ValuesAreTakenAtBothEndsAndRefusedOutside(string name)
    {
        (double least, double most, Func<double, object> set) = Ranges[name];
        _ = (set(least), set(most));
        bool whole = name is "Trials" or "Digits" or "MostTrials";
        foreach (
            double outside in whole
                ? [least - 1, most + 1]
                : new[] { least == Above0 ? 0 : Math.BitDecrement(least), Math.BitIncrement(most), double.NaN }
        )
            // What it is stands between: two spaces in a row would be the place of a name left out.
            Assert.Matches(
                @"^(?!.*  )(The )?\w.* must be ",
                Assert.ThrowsAny<ArgumentException>(() => set(outside)).Message
            );
    }

    [Fact]
    public void NothingIsLeftOut()
    {
        string[] numbers =
        [
            .. new[] { typeof(TuneOptions), typeof(ExposurePriors), typeof(MonteCarloOptions) }
                .SelectMany(t => t.GetProperties())
                .Where(p =>
                    p.SetMethod is not null
                    && (Nullable.GetUnderlyingType(p.PropertyType) ?? p.PropertyType) is var type
                    && (type == typeof(double) || type == typeof(int) || type == typeof(PerAxis))
                )
                .Select(p =>
                    p.DeclaringType == typeof(MonteCarloOptions) && p.Name == "Probability"
                        ? "MonteCarlo probability"
                        : p.Name
                ),
        ];
        Assert.Equal(numbers.Order(StringComparer.Ordinal), Ranges.Keys.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void BeliefsCannotBeMissing()
    {
        Assert.Throws<ArgumentNullException>(() => new TuneOptions { Priors = null! });
        Assert.Throws<ArgumentNullException>(() => new ExposurePriors { TimeEffect = null! });
        Assert.Throws<ArgumentNullException>(() => new ExposurePriors { RestEffect = null! });
        Assert.Throws<ArgumentNullException>(() => new ExposurePriors { RestTime = null! });
        Assert.Throws<ArgumentNullException>(() => new ExposurePriors { BetweenPrints = null! });
        Assert.Throws<ArgumentNullException>(() => new ExposurePriors { PenetrationDepth = null! });
        Assert.Throws<ArgumentNullException>(() => new ExposurePriors { Fits = null! });
    }
}
