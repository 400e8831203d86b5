using CalibGeom.Cli.Shared;

namespace CalibGeom.Cli.Tests;

/// <summary>A file in the place of another is recognised, stays as it is, and its own command is named.</summary>
[Collection(CurrentDirectory.Name)]
public class WrongFileTests
{
    private static readonly (string Line, string Said)[] Lines =
    [
        ("tune bench.csv", "calibgeom log add bench.csv --to LOG"),
        ("trend bench.csv", "calibgeom log add bench.csv --to LOG"),
        ("start --log bench.csv", "calibgeom log add bench.csv --to LOG"),
        ("log show bench.csv", "calibgeom log add bench.csv --to LOG"),
        ("log undo bench.csv", "calibgeom log add bench.csv --to LOG"),
        ("log add monday.csv --to bench.csv --time 2 --rest 1", "bench.csv is a sheet of readings"),
        ("inspect bench.csv", "Name a mesh in STL, OBJ or 3MF"),
        ("place bench.csv --plate 150x90 -o never.stl", "Name a mesh in STL, OBJ or 3MF"),
        ("draw --object bench.csv", "Name a preset, a spec"),
        ("draw --object demo-grey.jsonl", "calibgeom tune demo-grey.jsonl"),
        ("caliper show bench.csv", "Name a caliper record"),
        ("caliper add bench.csv 8.01 --jaw outside --gauge 8", "Name a caliper record"),
        ("predict cal.caliper.csv", "calibgeom caliper show cal.caliper.csv"),
        ("predict demo-grey.jsonl", "calibgeom tune demo-grey.jsonl"),
        ("predict holder.stl", "calibgeom inspect holder.stl"),
        ("tune holder.stl", "calibgeom inspect holder.stl"),
        ("inspect cal.caliper.csv", "calibgeom caliper show cal.caliper.csv"),
        ("help mak", "Did you mean make?"),
        ("help log ad", "Did you mean add?"),
    ];

    [Fact]
    public void ItsOwnCommandIsNamed()
    {
        using var folder = new TemporaryFolder();
        DemoSamples.Within(
            folder,
            () =>
            {
                foreach ((string line, string said) in Lines)
                {
                    CliRun run = CliRun.Of(line.Split(' '));
                    Assert.True(run is { ExitCode: ExitCode.BadUse, Out: "" }, $"{line}: {run.ExitCode} {run.Out}");
                    Assert.Contains(said, run.Error, StringComparison.Ordinal);
                }
                Assert.Equal(
                    Directory.GetFiles(DemoSamples.PathOf("")).Select(Path.GetFileName).Order(),
                    Directory.GetFiles(".").Select(Path.GetFileName).Order()
                );
                foreach (string file in Directory.GetFiles("."))
                    Assert.Equal(
                        File.ReadAllBytes(DemoSamples.PathOf(Path.GetFileName(file))),
                        File.ReadAllBytes(file)
                    );
            }
        );
    }
}
