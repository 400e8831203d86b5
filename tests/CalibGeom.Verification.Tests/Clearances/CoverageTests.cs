using System.Globalization;
using CalibGeom.Verification.Clearances;
using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Tests.Uncertainty;
using CalibGeom.Verification.Uncertainty;
using Xunit.Abstractions;

namespace CalibGeom.Verification.Tests.Clearances;

/// <summary>
/// People with calipers: scale, growth, jaws' biases, scatter, repeats and missing faces differ from one to the next;
/// how often the truth lies in the interval is counted. Seeds are fixed.
/// </summary>
public class CoverageTests(ITestOutputHelper output)
{
    private const int People = 2_000;
    private const int Designs = 50;
    private const double Scatter = 0.008;

    /// <summary>These people have no burrs, and a caliper whose error is the same at every length.</summary>
    private static readonly PredictionOptions Plain = new() { BurrError = 0, Robust = false };

    /// <summary>
    /// Readings of one person, and the truth of joint 1. Errors are what the budget says they are: rectangular jaws,
    /// Gaussian form and scatter.
    /// </summary>
    private static (ReadingSet Set, double X, double Y) Person(
        SeededRandom random,
        FeatureTable table,
        Plan plan,
        bool rounded,
        bool known
    )
    {
        double[] s = [0.003 * random.Normal(), 0.003 * random.Normal()],
            g = [0.02 + 0.02 * random.Normal(), 0.02 + 0.02 * random.Normal()];
        double root = Math.Sqrt(3),
            outside = root * Instrument.DefaultOutsideError * random.Uniform(-1, 1),
            inside = root * Instrument.DefaultInsideError * random.Uniform(-1, 1);
        var readings = new List<Reading>();
        var truth = new Dictionary<string, double>(StringComparer.Ordinal);
        foreach (Feature f in StandardObject.Faces.Select(id => table.Find(id)!))
        {
            int axis = f.Axis == "x" ? 0 : 1;
            bool pocket = f.Faces == FaceKind.Inside;
            truth[f.Id] = StandardObject.True(f, s[axis], g[axis]) + 0.003 * random.Normal();
            double seen = truth[f.Id] + 0.006 * random.Normal() + (pocket ? inside : outside);
            for (int k = 0; k < plan.Repeats[f.Id]; k++)
            {
                double value = seen + Scatter * random.Normal();
                readings.Add(Reading.Size(f.Id, rounded ? Math.Round(value, 2) : value));
            }
        }
        var caliper = new Instrument(
            "",
            resolution: rounded ? 0.01 : 0,
            repeatability: known ? Scatter : null,
            variation: 0
        );
        return (
            new ReadingSet(readings, [caliper], state: PartState.PostCured, material: Material.Rigid),
            (truth["box2.inside.x"] - truth["box1.outside.x"]) / 2,
            (truth["box2.inside.y"] - truth["box1.outside.y"]) / 2
        );
    }

    [Fact]
    public void FirstOrderWithRoundedReadingsCoversAtLeast94PerCent()
    {
        var random = new SeededRandom(2024);
        int covered = 0;
        double width = 0;
        Plan[] plans = Plan.Some(random);
        for (int i = 0; i < People; i++)
        {
            (ReadingSet set, double x, _) = Person(
                random,
                StandardObject.Table,
                plans[i % Designs],
                rounded: true,
                known: false
            );
            Estimate e = ClearancePrediction.Of(StandardObject.Table, set, Plain).Joints[0].Axes[0].Clearance;
            width += e.Interval.Width / People;
            if (e.Interval.Contains(x))
                covered++;
        }
        output.WriteLine(
            FormattableString.Invariant(
                $"first order, rounded: {100.0 * covered / People:0.00} % of {People}, mean width {width:0.0000} mm"
            )
        );
        Assert.InRange((double)covered / People, 0.94, 0.985);
    }

    [Fact]
    public void MonteCarloWithKnownNoiseCovers94To96PerCent()
    {
        var random = new SeededRandom(77);
        int covered = 0,
            first = 0;
        double ratio = 0;
        Plan[] plans = Plan.Some(random);
        // With known noise the width depends on what was measured alone, so each plan is drawn once and its interval
        // moved to each person's value.
        Interval[] offsets = plans
            .Select(
                (plan, i) =>
                    Offset(Person(random, StandardObject.Table, plan, rounded: false, known: true).Set, (ulong)i)
            )
            .ToArray();
        for (int i = 0; i < People; i++)
        {
            (ReadingSet set, double x, _) = Person(
                random,
                StandardObject.Table,
                plans[i % Designs],
                rounded: false,
                known: true
            );
            Estimate e = ClearancePrediction.Of(StandardObject.Table, set, Plain).Joints[0].Axes[0].Clearance;
            Interval o = offsets[i % Designs];
            ratio += e.Interval.Width / o.Width / People;
            if (new Interval(e.Value + o.Low, e.Value + o.High).Contains(x))
                covered++;
            if (e.Interval.Contains(x))
                first++;
        }
        output.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"Monte Carlo, known noise: {100.0 * covered / People:0.00} %; first order "
                    + $"{100.0 * first / People:0.00} %; widths first order / Monte Carlo {ratio:0.000}"
            )
        );
        Assert.InRange((double)covered / People, 0.94, 0.96);
        Assert.True((double)first / People >= 0.94);
        Assert.InRange(ratio, 0.98, 1.1);
    }

    [Fact]
    public void TheProbabilityOfEnteringIsCalibrated()
    {
        var random = new SeededRandom(5);
        int[] count = new int[10],
            entered = new int[10];
        double[] said = new double[10];
        Plan[] plans = Plan.Some(random);
        // Designs from not-go to loose, so that every probability occurs.
        FeatureTable[] tables = Enumerable
            .Range(0, 121)
            .Select(k => StandardObject.Make(-0.08 + 0.002 * k, 0.05))
            .ToArray();
        for (int i = 0; i < People; i++)
        {
            FeatureTable table = tables[(int)random.Uniform(0, tables.Length)];
            (ReadingSet set, double x, double y) = Person(
                random,
                table,
                plans[i % Designs],
                rounded: true,
                known: false
            );
            double p = ClearancePrediction.Of(table, set, Plain).Joints[0].ProbabilityEnters;
            int bin = Math.Min(9, (int)(10 * p));
            count[bin]++;
            said[bin] += p;
            if (x > 0 && y > 0)
                entered[bin]++;
        }
        for (int b = 0; b < 10; b++)
        {
            double mean = said[b] / count[b],
                observed = (double)entered[b] / count[b];
            double allowed = Math.Max(0.02, 3 * Math.Sqrt(mean * (1 - mean) / count[b]));
            output.WriteLine(
                FormattableString.Invariant(
                    $"said {mean:0.000}, entered {observed:0.000} of {count[b]}, allowed {allowed:0.000}"
                )
            );
            Assert.True(count[b] > 20);
            Near.Absolute(mean, observed, allowed);
        }
    }

    private static Interval Offset(ReadingSet set, ulong seed)
    {
        ClearancePrediction p = ClearancePrediction.Of(
            StandardObject.Table,
            set,
            Plain with
            {
                Route = Route.MonteCarlo,
                Draws = 5_000,
                Seed = seed + 100,
            }
        );
        ClearancePrediction plain = ClearancePrediction.Of(StandardObject.Table, set, Plain);
        Interval drawn = p.Joints[0].Axes[0].Clearance.Interval;
        double value = plain.Joints[0].Axes[0].Clearance.Value;
        return new Interval(drawn.Low - value, drawn.High - value);
    }

    /// <summary>Which faces a person reads, and how often.</summary>
    private sealed record Plan(IReadOnlyDictionary<string, int> Repeats)
    {
        internal static Plan[] Some(SeededRandom random) =>
            Enumerable.Range(0, Designs).Select(_ => One(random)).ToArray();

        private static Plan One(SeededRandom random)
        {
            int repeats = 1 + (int)random.Uniform(0, 4);
            double missing = 0.4 * random.Uniform();
            string[] always = ["span.x", "span.y", "box1.outside.x", "box2.inside.y"];
            return new Plan(
                StandardObject.Faces.ToDictionary(
                    id => id,
                    id => !always.Contains(id) && random.Uniform() < missing ? 0 : repeats
                )
            );
        }
    }
}
