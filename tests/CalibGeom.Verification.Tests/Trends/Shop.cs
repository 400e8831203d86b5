using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Trends;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Tests.Trends;

/// <summary>
/// A shop that prints a coupon a week: how its light goes, with which caliper it measures, what is missing. Growth and
/// print-through answer to light by amounts drawn from what trend believes. A coupon has a bridge, read once with the
/// same caliper; a comb only where a row says so, the standard one, which knows print-through to a step.
/// </summary>
internal sealed class Shop
{
    internal const int Coupons = 30,
        UsualOnset = 8;
    private const double Beam = 2;
    private readonly SeededRandom random;
    private readonly double b,
        depth,
        growth,
        through,
        difference,
        told,
        toldDepth,
        lead;

    internal Shop(ulong seed)
    {
        random = new SeededRandom(seed);
        b =
            TrendOptions.Default.LightEffect.Median
            * Math.Exp(TrendOptions.Default.LightEffect.LogDeviation * random.Normal());
        depth =
            TrendOptions.Default.PenetrationDepth.Median
            * Math.Exp(TrendOptions.Default.PenetrationDepth.LogDeviation * random.Normal());
        growth = 0.02 + 0.02 * random.Normal();
        through = random.Uniform(0.25, 0.45);
        difference = 0.003 * random.Normal();
        told = random.Normal();
        toldDepth = random.Normal();
        lead = random.Uniform();
    }

    /// <summary>ln(light), by how many weeks have gone since the change began; not above 0: before it.</summary>
    internal Func<double, double> Change { get; init; } = _ => 0;

    /// <summary>When the change begins, in weeks after the first coupon: at any moment of the week before the coupon
    /// <see cref="Onset"/>.</summary>
    internal double Begins => Onset - 1 + lead;

    /// <summary>The first coupon after the change began.</summary>
    internal int Onset { get; init; } = UsualOnset;

    /// <summary>ln(light) at a coupon.</summary>
    internal double Light(int coupon) => Change(coupon - Begins);

    /// <summary>Vat temperature at a coupon; growth answers by 0.0005 mm a kelvin.</summary>
    internal Func<int, double>? Vat { get; init; }

    /// <summary>The coupon from which another caliper is used, with an error of its own.</summary>
    internal int OtherCaliperFrom { get; init; } = int.MaxValue;

    internal double SharedBias { get; init; }

    internal bool Bridge { get; init; } = true;

    internal bool Comb { get; init; }

    internal bool ByFeel { get; init; }

    /// <summary>How often a face is not read.</summary>
    internal double Missing { get; init; }

    internal Trial[] Print(int coupons = Coupons) => Enumerable.Range(0, coupons).Select(Coupon).ToArray();

    internal double GrowthEffect => b;

    /// <summary>Whether a calibration told the effects of light to a fifth.</summary>
    internal bool Calibrated { get; init; }

    /// <summary>Whether the comb has tunnels in steps of a fortieth of a decade instead of a tenth.</summary>
    internal bool FineComb { get; init; }

    /// <summary>What trend is told of this shop.</summary>
    internal TrendOptions Options =>
        Calibrated
            ? TrendOptions.Default with
            {
                LightEffect = new LogNormalPrior(b * Math.Exp(0.2 * told), 0.2),
                PenetrationDepth = new LogNormalPrior(depth * Math.Exp(0.2 * toldDepth), 0.2),
            }
            : TrendOptions.Default;

    private IReadOnlyList<double> Heights =>
        FineComb
            ? [.. Enumerable.Range(0, 29).Select(i => Math.Round(0.16 * Math.Pow(10, i / 40.0), 3))]
            : SlotOutcome.StandardHeights;

    private Trial Coupon(int n)
    {
        double vat = Vat?.Invoke(n) ?? 25,
            g = growth + b * Light(n) + 0.005 * random.Normal() + 0.0005 * (vat - 25),
            z = through + depth * Light(n) + 0.010 * random.Normal();
        bool other = n >= OtherCaliperFrom;
        double bias = SharedBias + (other ? 0.015 : 0);
        GrowthReading? Read(double value) =>
            ByFeel || random.Uniform() < Missing
                ? null
                : new GrowthReading(value + bias + 0.0025 * random.Normal(), 0.0025, 0.0115);
        GrowthReading? x = Read(g + difference / 2),
            y = Read(g - difference / 2);
        JointOutcome[] joints = [Feel("joint1", 0.05 + 2 * growth - 2 * g), Feel("joint2", 0.05 + 2 * growth - 2 * g)];
        double? beam = Bridge && random.Uniform() >= Missing ? Beam + z + bias + 0.010 * random.Normal() : null;
        return new Trial(
            new ExposureSettings(2.5, 1),
            new TrialConditions(0.05, "Demo grey", "bench", temperatureStart: Vat is null ? null : vat)
        )
        {
            Date = new DateOnly(2026, 1, 5).AddDays(7 * n),
            Digest = "0123456789abcdef",
            Instrument = other ? "new" : "cal",
            GrowthX = x,
            GrowthY = y,
            Joints = joints,
            Slots = Comb ? new SlotOutcome(Heights, Heights.Count(h => h > z)) : null,
            Readings = beam is { } read
                ? new Dictionary<string, IReadOnlyList<double>> { [KnownFeatures.BridgeThickness] = [read] }
                : [],
            Nominals = new Dictionary<string, double> { [KnownFeatures.BridgeThickness] = Beam },
        };
    }

    private JointOutcome Feel(string id, double clearance)
    {
        double felt = clearance + 0.010 * random.Normal();
        FeltFit fit =
            felt < 0 ? FeltFit.Refuses
            : felt < 0.02 ? FeltFit.Binds
            : felt < 0.07 ? FeltFit.Slides
            : FeltFit.Rattles;
        return new JointOutcome(id, 0.05, ByFeel ? fit : null);
    }
}
