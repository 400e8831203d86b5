using CalibGeom.Light;
using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Tuning;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Tests.Tuning;

/// <summary>
/// A printer with a person's caliper, drawn at random from the ranges tabled in docs/tune.md: growth of the dose model
/// less the effect of
/// rest, a smooth misfit that tuning does not model, between-print noise; columns survive by dose, diameter and load
/// ratio, whatever the rest.
/// </summary>
internal sealed class HiddenPrinter
{
    internal const double Layer = 0.05,
        Head = 1.6;
    private static readonly double[] Diameters = [0.25, 0.28, 0.315, 0.355, 0.4, 0.45, 0.5, 0.56, 0.63, 0.71, 0.8];
    private readonly SeededRandom random;
    private readonly GaussianBlur blur;
    private readonly WorkingCurve curve;
    private readonly SurvivalLaw law;
    private readonly double irradiance,
        restEffect,
        restTime,
        misfit,
        phase,
        difference,
        bias;

    internal HiddenPrinter(ulong seed)
    {
        random = new SeededRandom(seed);
        blur = new GaussianBlur(Draw(HiddenRanges.Blur));
        curve = new WorkingCurve(Draw(HiddenRanges.Depth), Draw(HiddenRanges.Critical));
        Start = new ExposureSettings(Math.Round(Draw(HiddenRanges.Time), 2), Math.Round(Draw(HiddenRanges.Rest), 1));
        double ratio = Draw(HiddenRanges.DoseRatio);
        irradiance = ratio * curve.CriticalDose / (Start.Time * new LayerLight(curve, 1, 1, Layer).Accumulation());
        restEffect = Within(HiddenRanges.RestEffect);
        restTime = Within(HiddenRanges.RestTime);
        misfit = random.Uniform(0, HiddenRanges.MostMisfit);
        phase = random.Uniform(0, 2 * Math.PI);
        difference = HiddenRanges.AxisDifference * random.Normal();
        bias = HiddenRanges.CaliperBias * random.Normal();
        law = new SurvivalLaw(
            Draw(HiddenRanges.Limit),
            Draw(HiddenRanges.Slope),
            Draw(HiddenRanges.DoseExponent),
            Draw(HiddenRanges.LoadExponent)
        );
        TargetGrowth =
            Growth(Start.Time, Start.Rest) + random.Uniform(-HiddenRanges.FirstMisfit, HiddenRanges.FirstMisfit);
    }

    internal ExposureSettings Start { get; }

    internal double TargetGrowth { get; }

    internal double TargetClearance => 0.05;

    /// <summary>The clearance the person designed, so that the target growth gives the target clearance.</summary>
    internal double Designed => TargetClearance + 2 * TargetGrowth;

    /// <summary>Mean growth of the process, without edge offset.</summary>
    internal double Growth(double time, double rest) =>
        blur.EdgeDistance(1 / Math.Max(1.02, Light(time).WallRatio()))
        - restEffect * (1 - Math.Exp(-rest / restTime))
        + misfit * Math.Sin(HiddenRanges.TimeWave * Math.Log(time / Start.Time) + HiddenRanges.RestWave * rest + phase);

    /// <summary>The diameter of which half print.</summary>
    internal double ColumnLimit(double time)
    {
        double low = 0.02,
            high = 5,
            ratio = Light(time).WallRatio();
        for (int i = 0; i < 60; i++)
        {
            double middle = Math.Sqrt(low * high);
            if (law.Chance(blur, middle, ratio, Head) < 0.5)
                low = middle;
            else
                high = middle;
        }
        return Math.Sqrt(low * high);
    }

    /// <summary>
    /// The smallest column limit of all settings within reach of four trials (three steps) whose growth is on target
    /// without an edge offset.
    /// </summary>
    internal double BestReachable(TuneOptions options)
    {
        double best = double.PositiveInfinity,
            lowest = Start.Time * Math.Pow(1 - options.MostDown, 3),
            highest = Start.Time * Math.Pow(1 + options.MostUp, 3);
        for (
            double rest = Start.Rest;
            rest <= Math.Min(options.MostRest, Start.Rest + 3 * options.MostRestStep) + 1e-9;
            rest += 0.25
        )
            best = Math.Min(best, ColumnLimit(TimeOnTarget(rest, lowest, highest)));
        return best;
    }

    internal Trial Print(ExposureSettings settings)
    {
        double growth =
            Growth(settings.Time, settings.Rest) + settings.EdgeOffset + HiddenRanges.BetweenPrints * random.Normal();
        LayerLight light = Light(settings.Time);
        double through = light.PrintThrough() + HiddenRanges.ThroughNoise * random.Normal();
        return new Trial(settings, new TrialConditions(Layer, "hidden", "hidden"))
        {
            GrowthX = Read(growth + difference / 2),
            GrowthY = Read(growth - difference / 2),
            Joints = [Feel("joint1", growth), Feel("joint2", growth)],
            Columns = Diameters.SelectMany(d => new[] { Stand(d, light), Stand(d, light) }).ToArray(),
            Slots = new SlotOutcome(SlotOutcome.StandardHeights, SlotOutcome.StandardHeights.Count(h => h > through)),
        };
    }

    private double Draw((double Low, double High) range) => random.Uniform(range.Low, range.High);

    private LayerLight Light(double time) => new(curve, irradiance, time, Layer);

    private double TimeOnTarget(double rest, double low, double high)
    {
        if (Growth(low, rest) > TargetGrowth)
            return low;
        if (Growth(high, rest) < TargetGrowth)
            return high;
        for (int i = 0; i < 50; i++)
        {
            double middle = Math.Sqrt(low * high);
            if (Growth(middle, rest) < TargetGrowth)
                low = middle;
            else
                high = middle;
        }
        return Math.Sqrt(low * high);
    }

    private GrowthReading Read(double growth) =>
        new(
            growth + bias + HiddenRanges.CaliperNoise * random.Normal(),
            HiddenRanges.CaliperNoise,
            HiddenRanges.CaliperBias
        );

    private JointOutcome Feel(string id, double growth)
    {
        double felt = Designed - 2 * growth + HiddenRanges.FitNoise * random.Normal();
        FeltFit fit =
            felt < 0 ? FeltFit.Refuses
            : felt < 0.02 ? FeltFit.Binds
            : felt < 0.07 ? FeltFit.Slides
            : FeltFit.Rattles;
        return new JointOutcome(id, Designed, fit);
    }

    private ColumnOutcome Stand(double diameter, LayerLight light)
    {
        bool printed = random.Uniform() < law.Chance(blur, diameter, light.WallRatio(), Head);
        ColumnStage stood =
            !printed ? ColumnStage.Lost
            : random.Uniform() < 0.02 ? ColumnStage.Plate
            : ColumnStage.Cure;
        return new ColumnOutcome(diameter, stood, "", Head);
    }

    // Lognormal within its central 95 %.
    private double Within((double Median, double Low, double High) range)
    {
        (double median, double low, double high) = range;
        while (true)
        {
            double value = median * Math.Exp(Math.Log(high / low) / 3.92 * random.Normal());
            if (value >= low && value <= high)
                return value;
        }
    }
}
