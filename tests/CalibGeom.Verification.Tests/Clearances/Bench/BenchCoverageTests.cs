using Xunit.Abstractions;

namespace CalibGeom.Verification.Tests.Clearances.Bench;

/// <summary>
/// Coverage on benches that are not as the budget assumes. CALIBGEOM_BENCHES=2000 makes the table of docs/predict.md;
/// the short form only holds what so few benches can show.
/// </summary>
public class BenchCoverageTests(ITestOutputHelper output)
{
    private static readonly string Only = Environment.GetEnvironmentVariable("CALIBGEOM_ROWS") ?? "";

    private static readonly int Benches = int.TryParse(
        Environment.GetEnvironmentVariable("CALIBGEOM_BENCHES"),
        out int n
    )
        ? n
        : 40;

    [Fact]
    public void IntervalsHoldTheTruthOrTheReportSaysWhyNot()
    {
        foreach (bool references in new[] { false, true })
        foreach (bool declared in new[] { false, true })
        {
            double assumed = 0;
            foreach (
                BenchWorld world in BenchWorld.All.Where(w =>
                    assumed == 0
                    || (
                        (!declared || w.HasDeclaration)
                        && Only.Split(',').Any(o => w.Name.Contains(o, StringComparison.Ordinal))
                    )
                )
            )
            {
                BenchOutcome o = BenchOutcome.Of(world, references, declared, Benches, 2026);
                if (assumed == 0)
                    assumed = o.Width;
                Require(o);
                Write(
                    FormattableString.Invariant(
                        $"{(references ? "refs" : "    ")} {(declared ? "decl" : "    ")} {world.Name, -50} {100 * o.Coverage, 6:0.0} {o.Width / assumed, 6:0.00} {100 * o.Loud, 5:0} of {o.Misses, 4} misses; alarms {100 * o.Alarms, 5:0.0}; width {o.Width:0.0000}"
                    )
                );
            }
        }
    }

    /// <summary>93 % within three binomial deviations of so few benches, or most misses with a loud word.</summary>
    private static void Require(BenchOutcome o)
    {
        double slack = 3 * Math.Sqrt(0.93 * 0.07 / Benches);
        Assert.True(o.Coverage >= 0.93 - slack || o.Loud >= 0.8, o.ToString());
        if (o.World.Name == BenchWorld.All[0].Name)
            Assert.True(o.Alarms <= 0.05 + 3 * Math.Sqrt(0.05 * 0.95 / Benches), o.ToString());
    }

    /// <summary>A long run can be watched: its lines go to the file that CALIBGEOM_BENCH_LOG names, too.</summary>
    private void Write(string line)
    {
        output.WriteLine(line);
        if (Environment.GetEnvironmentVariable("CALIBGEOM_BENCH_LOG") is { } path)
            File.AppendAllText(path, line + "\n");
    }
}
