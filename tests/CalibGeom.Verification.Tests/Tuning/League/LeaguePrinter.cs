using CalibGeom.Light;
using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Tuning;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Tests.Tuning.League;

/// <summary>
/// A hidden printer of other make than what tune assumes: light cures by a working curve, columns answer to the dose on
/// their axis, growth by a law of the row, and at the start one exposure cures 1.2 to 4 layers unless the row says
/// otherwise.
/// </summary>
internal sealed class LeaguePrinter
{
    internal const double Layer = 0.05,
        Head = 1.6,
        TargetClearance = 0.05,
        LeastLayers = 1.2,
        MostPrintThrough = 0.40,
        MostSlower = 0.10,
        Lift = 7;
    internal static readonly double[] Diameters = [0.25, 0.28, 0.315, 0.355, 0.4, 0.45, 0.5, 0.56, 0.63, 0.71, 0.8];
    private readonly LeagueRow row;
    private readonly ulong seed;
    private readonly SeededRandom random;
    private readonly WorkingCurve curve;
    private readonly GaussianBlur blur;
    private readonly SurvivalLaw law;
    private readonly double soundTime,
        irradiance,
        timeEffect,
        restEffect,
        restTime,
        misfit,
        phase,
        difference,
        bias,
        person,
        betweenPrints,
        firstGrowth;
    private double kept = 1;

    internal LeaguePrinter(LeagueRow row, ulong seed)
    {
        (this.row, this.seed) = (row, seed);
        random = new SeededRandom(seed);
        blur = new GaussianBlur(random.Uniform(0.015, 0.025));
        curve = new WorkingCurve(random.Uniform(0.08, 0.2), random.Uniform(4, 12));
        soundTime = Math.Round(random.Uniform(1.5, 4), 2);
        double layers = random.Uniform(LeastLayers, 4);
        irradiance = curve.DoseFor(layers * Layer) / soundTime;
        timeEffect = Cut(0.03, 0.5, 0.012, 0.08);
        restEffect = Cut(0.012, 0.7, 0.003, 0.05);
        restTime = Cut(1.5, 0.5, 0.5, 4);
        timeEffect = row.TimeEffect ?? timeEffect;
        misfit = random.Uniform(0, 0.003);
        phase = random.Uniform(0, 2 * Math.PI);
        difference = 0.002 * random.Normal();
        bias = row.Bias.True * random.Normal();
        person = random.Normal();
        betweenPrints = random.Uniform(row.BetweenPrints.Low, row.BetweenPrints.High);
        law = new SurvivalLaw(
            random.Uniform(0.3, 0.5),
            random.Uniform(6, 15),
            random.Uniform(0.3, 0.8),
            random.Uniform(0.15, 0.35)
        );
        double rest = Math.Round(random.Uniform(0, 1), 1);
        firstGrowth = random.Uniform(-0.02, 0.05);
        TargetGrowth = Growth(soundTime, rest) + random.Uniform(-0.03, 0.03);
        Start = new ExposureSettings(Math.Round(soundTime * row.StartFactor, 2), rest);
    }

    internal ExposureSettings Start { get; }

    internal double TargetGrowth { get; }

    internal double Designed => TargetClearance + 2 * TargetGrowth;

    /// <summary>What is asked of tune for this printer.</summary>
    internal TuneOptions Options =>
        TuneOptions.Default with
        {
            Target = TargetClearance,
            Pixel = row.Pixel,
            OffsetAllowed = row.OffsetAllowed,
        };

    /// <summary>The same printer before its first print.</summary>
    internal LeaguePrinter Again() => new(row, seed);

    /// <summary>Lets only a share of the light through from now on.</summary>
    internal void Dim(double share) => kept *= share;

    /// <summary>The offset that a wish becomes on this printer, mm.</summary>
    internal double Offset(double wish) =>
        !row.OffsetAllowed ? 0
        : row.Pixel is { } pixel ? Math.Round(wish / pixel) * pixel
        : Math.Round(wish, 3);

    /// <summary>Mean growth of the process with the light that is left, without edge offset, mm.</summary>
    internal double Growth(double time, double rest)
    {
        double x = Math.Log(time * kept / soundTime);
        double light = row.Law switch
        {
            GrowthLaw.Power => (Math.Exp(0.5 * x) - 1) / 0.5,
            GrowthLaw.Saturation => (1 - Math.Exp(-0.8 * x)) / 0.8,
            _ => x,
        };
        return firstGrowth
            + timeEffect * light
            - restEffect * (1 - Math.Exp(-Math.Pow(rest / restTime, row.RestStretch)))
            + misfit * Math.Sin(3 * x + 0.8 * rest + phase);
    }

    /// <summary>How deep light passes through a ceiling, mm.</summary>
    internal double PrintThrough(double time) => Light(time).PrintThrough();

    /// <summary>How many layers one exposure cures.</summary>
    internal double Layers(double time) => Light(time).CureDepth / Layer;

    /// <summary>The diameter of which half print, mm.</summary>
    internal double ColumnLimit(double time)
    {
        double low = 0.02,
            high = 5;
        for (int i = 0; i < 30; i++)
        {
            double middle = Math.Sqrt(low * high);
            if (law.Chance(blur, middle, Light(time).WallRatio(), Head) < 0.5)
                low = middle;
            else
                high = middle;
        }
        return high;
    }

    /// <summary>Columns of the standard object that are lost on average.</summary>
    internal double LostColumns(double time) =>
        Diameters.Sum(d => 2 * (1 - law.Chance(blur, d, Light(time).WallRatio(), Head)));

    /// <summary>
    /// The light of the best settings within reach of four steps: more while 10 % of it lower the column limit by half
    /// an R40 step, within print-through and time; where not any offset can be had, only light that holds the target
    /// at some rest, or, where none does, that comes closest to it.
    /// </summary>
    internal double BestTime()
    {
        double needed = LeastNeeded(),
            inTime = Start.Time + MostSlower * (Start.Time + Start.Rest + Lift),
            allowed = Math.Max(needed, Math.Min(inTime, Deepest())),
            top = Math.Min(allowed, Start.Time * Math.Pow(1.25, 4)),
            time = Math.Max(Math.Min(Start.Time, allowed), Math.Min(needed, top));
        time = Math.Max(time, Start.Time * Math.Pow(0.8, 4));
        while (time * 1.02 <= top && 1 - ColumnLimit(1.1 * time) / ColumnLimit(time) >= 0.0284)
            time *= 1.02;
        return row.OffsetAllowed && row.Pixel is null ? time : Holding(needed, top);
    }

    /// <summary>The exposure that cures the least number of layers, s.</summary>
    internal double LeastNeeded() => curve.DoseFor(LeastLayers * Layer) / irradiance / kept;

    internal Trial Print(ExposureSettings settings)
    {
        double growth = Growth(settings.Time, settings.Rest) + settings.EdgeOffset + betweenPrints * random.Normal();
        LayerLight light = Light(settings.Time);
        double through = light.PrintThrough() + 0.010 * random.Normal();
        var trial = new Trial(settings, new TrialConditions(Layer, "hidden", "hidden"))
        {
            GrowthX = Read(growth + difference / 2),
            GrowthY = Read(growth - difference / 2),
            Joints = [Feel("joint1", growth), Feel("joint2", growth)],
            Columns = [.. Diameters.SelectMany(d => new[] { Stand(d, light), Stand(d, light) })],
            Slots = new SlotOutcome(SlotOutcome.StandardHeights, SlotOutcome.StandardHeights.Count(h => h > through)),
        };
        kept *= row.LightKept;
        return row.Measured ? trial : trial with { GrowthX = null, GrowthY = null };
    }

    // The brightest light between two limits that holds the target with an offset that can be had, at some rest; where
    // there is none, the light that comes closest to it.
    private double Holding(double least, double most)
    {
        double[] offsets = row.OffsetAllowed ? [.. Enumerable.Range(-3, 7).Select(n => n * row.Pixel!.Value)] : [0];
        double best = least,
            closest = double.PositiveInfinity;
        for (double time = Math.Max(least, Start.Time * Math.Pow(0.8, 4)); time <= most; time *= 1.01)
            foreach (double offset in offsets)
            {
                double off = Math.Max(
                    0.001,
                    Math.Max(TargetGrowth - Growth(time, 0) - offset, Growth(time, 6) + offset - TargetGrowth)
                );
                if (off <= closest)
                    (closest, best) = (off, time);
            }
        return best;
    }

    /// <summary>Whether a setting whose light is sound and allowed holds the target, print time aside.</summary>
    internal bool CanHold()
    {
        double[] offsets = row.OffsetAllowed ? [.. Enumerable.Range(-3, 7).Select(n => n * row.Pixel!.Value)] : [0];
        for (double time = LeastNeeded(); time <= Deepest(); time *= 1.01)
            foreach (double offset in offsets)
                if (
                    Growth(time, 0) + offset >= TargetGrowth - LeagueTable.GrowthTolerance
                    && Growth(time, 6) + offset <= TargetGrowth + LeagueTable.GrowthTolerance
                )
                    return true;
        return false;
    }

    // Where print-through reaches its limit, s.
    private double Deepest()
    {
        double at = Light(1).PrintThrough();
        return Math.Exp((MostPrintThrough - at) / curve.PenetrationDepth);
    }

    private LayerLight Light(double time) => new(curve, irradiance * kept, time, Layer);

    private GrowthReading Read(double growth) =>
        new(growth + bias + row.Noise * random.Normal(), row.Noise, row.Bias.Declared);

    // One person: a shift that all words share, and a little of each word's own.
    private JointOutcome Feel(string id, double growth)
    {
        double felt = Designed - 2 * growth + 0.009 * person + 0.0045 * random.Normal();
        FeltFit fit =
            felt < 0 ? FeltFit.Refuses
            : felt < 0.02 ? FeltFit.Binds
            : felt < 0.07 ? FeltFit.Slides
            : FeltFit.Rattles;
        return new JointOutcome(id, Designed, fit);
    }

    private ColumnOutcome Stand(double diameter, LayerLight light) =>
        new(
            diameter,
            random.Uniform() < law.Chance(blur, diameter, light.WallRatio(), Head)
                ? ColumnStage.Cure
                : ColumnStage.Lost,
            "",
            Head
        );

    // Lognormal between two limits.
    private double Cut(double median, double spread, double low, double high)
    {
        while (true)
            if (median * Math.Exp(spread * random.Normal()) is var value && value >= low && value <= high)
                return value;
    }
}
