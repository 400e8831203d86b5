using CalibGeom.Verification.Clearances;
using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Tests.Clearances.Bench;

/// <summary>How often intervals hold the truth on benches of one kind.</summary>
/// <param name="World">What is wrong there.</param>
/// <param name="References">Whether gauges were read.</param>
/// <param name="Declared">Whether what is wrong was said, where there is an option for it.</param>
/// <param name="Coverage">Share of benches whose interval holds the truth.</param>
/// <param name="Width">Mean width, mm.</param>
/// <param name="Loud">Share of the misses with a warning.</param>
/// <param name="Misses">How many misses.</param>
/// <param name="Alarms">Share of all benches with a warning of the model or a reading.</param>
internal sealed record BenchOutcome(
    BenchWorld World,
    bool References,
    bool Declared,
    double Coverage,
    double Width,
    double Loud,
    int Misses,
    double Alarms
)
{
    internal static BenchOutcome Of(BenchWorld world, bool references, bool declared, int benches, ulong seed)
    {
        var random = new SeededRandom(seed);
        int misses = 0,
            loud = 0,
            alarms = 0;
        double width = 0;
        for (int i = 0; i < benches; i++)
        {
            var person = new BenchPerson(random, world);
            IReadOnlyList<ReadingSet> sets = person.Read(references, declared);
            (Interval interval, bool warned) = Answer(world, sets, declared);
            width += interval.Width / benches;
            alarms += warned ? 1 : 0;
            if (interval.Contains(person.Truth))
                continue;
            misses++;
            loud += warned ? 1 : 0;
        }
        return new BenchOutcome(
            world,
            references,
            declared,
            1 - (double)misses / benches,
            width,
            misses > 0 ? (double)loud / misses : 1,
            misses,
            (double)alarms / benches
        );
    }

    private static (Interval Interval, bool Warned) Answer(
        BenchWorld world,
        IReadOnlyList<ReadingSet> sets,
        bool declared
    )
    {
        var options = new PredictionOptions();
        if (declared && world.BetweenPrints > 0)
            options = options with { BetweenPrints = world.BetweenPrints };
        ClearancePrediction p = ClearancePrediction.Of(StandardObject.Table, sets, options);
        OwnJoint? own = world.BetweenPrints > 0 ? p.For(8, 8.1) : null;
        IEnumerable<Finding> findings = own is null ? p.Findings : p.Findings.Concat(own.Findings);
        return (
            (own?.Axes[0].Clearance ?? p.Joints[0].Axes[0].Clearance).Interval,
            findings.Any(f => world.Says.Contains(f.Rule))
        );
    }
}
