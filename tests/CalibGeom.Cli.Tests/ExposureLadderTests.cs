using System.Text.Json.Nodes;
using CalibGeom.Cli.Shared;
using CalibGeom.Formats.Stl;
using CalibGeom.Meshes;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;
using CalibGeom.Verification.Logs;

namespace CalibGeom.Cli.Tests;

/// <summary>Labelled low coupons on one plate, each with its own exposure, from <c>place</c> to the log.</summary>
public class ExposureLadderTests
{
    private const string Command = "calibgeom place --ladder 1.8:2.6 --count 4 --plate 150x90 -o ladder.stl";

    [Fact]
    public void EveryCouponIsMarkedAndGoesIntoTheLogWithItsOwnExposure()
    {
        using var folder = new TemporaryFolder();
        CliRun run = CliRun.Of([.. Command.Split(' ')[1..^1], folder["ladder.stl"]]);
        Assert.True(run.ExitCode == ExitCode.Done, run.Error);
        DocsPage.RequireShows("place.md", Command);
        DocsPage.RequireShows("place.md", run.Out);
        using FileStream stl = File.OpenRead(folder["ladder.stl"]);
        TriangleMesh mesh = StlReader.Read(stl);
        Assert.Equal(4, mesh.ComponentCount);
        JsonNode file = JsonNode.Parse(File.ReadAllText(folder["ladder.object.json"]))!;
        Assert.Equal([1.8, 2.03, 2.3, 2.6], file["coupons"]!.AsArray().Select(c => (double)c!["exposure"]!));
        RequireMarks(mesh, file["coupons"]!.AsArray(), "A1 1.80S", "A2 2.03S", "A3 2.30S", "A4 2.60S");
        folder.Write(
            "bench.csv",
            $"""
            # digest {file["digest"]}
            feature,value,unit,instrument,note
            A1/box1.outside.x,6.29,mm,,
            A1/box1.outside.y,6.29,mm,,
            A4/box1.outside.x,6.35,mm,,
            A4/box1.outside.y,6.35,mm,,
            """
        );
        foreach (string label in new[] { "A1", "A4" })
        {
            CliRun added = CliRun.Of([
                .. $"log add {folder["bench.csv"]} --coupon {label} --rest 1 --resin Demo --printer bench".Split(' '),
                "--to",
                folder["log.jsonl"],
            ]);
            Assert.True(added.ExitCode == ExitCode.Done, added.Error);
        }
        IReadOnlyList<Trial> trials = TrialLog.Read(folder["log.jsonl"]).Trials;
        Assert.Equal([1.8, 2.6], trials.Select(t => t.Settings.Time));
        Assert.Equal(["A1", "A4"], trials.Select(t => t.Place!.Label));
    }

    /// <summary>
    /// What is raised on each coupon is its label and its exposure: its volume is that of an object with this title,
    /// and no other title of the ladder has it.
    /// </summary>
    private static void RequireMarks(TriangleMesh plate, JsonArray coupons, params string[] marks)
    {
        double[] wanted = [.. marks.Select(m => Volume(Searching(m), 0, 0))];
        Assert.Equal(marks.Length, wanted.Select(v => Math.Round(v, 3)).Distinct().Count());
        Assert.Equal(
            wanted.Select(v => Math.Round(v, 3)),
            coupons.Select(c => Math.Round(Volume(plate, (double)c!["x"]!, (double)c["y"]!), 3))
        );
    }

    private static TriangleMesh Searching(string title) =>
        TestObject.Of(Presets.Search with { Title = title }).ToMesh();

    /// <summary>Volume of what stands within the coupon's reach of a place, mm3.</summary>
    private static double Volume(TriangleMesh mesh, double x, double y) =>
        Enumerable
            .Range(0, mesh.TriangleCount)
            .Select(mesh.Triangle)
            .Where(t => Math.Abs(t.A.X - x) < 30 && Math.Abs(t.A.Y - y) < 20)
            .Sum(t => Vector3D.Dot(t.A, Vector3D.Cross(t.B, t.C)) / 6);

    [Theory]
    [InlineData("1.8", "1.8:2.6")]
    [InlineData("2.6:1.8", "does not rise; the shortest exposure comes first")]
    [InlineData("1.8:1.82", "s are not 0.01 s apart; ask for fewer")]
    [InlineData("1,8:2.6", "Use a point for decimals")]
    [InlineData("0:2", "0.05")]
    public void ALadderThatIsNoneIsRefused(string ladder, string said)
    {
        CliRun run = CliRun.Of("place", "--ladder", ladder, "--plate", "150x90", "-o", "never.stl");
        Assert.Equal(ExitCode.BadUse, run.ExitCode);
        Assert.Contains(said, run.Error, StringComparison.Ordinal);
        Assert.False(File.Exists("never.stl"));
    }

    [Fact]
    public void APlaceForACouponOfALadderIsNotAskedForAndPartsAreNeededWithoutOne()
    {
        string[] rest = ["--plate", "150x90", "-o", "never.stl"];
        Assert.Contains(
            "leave --at away",
            CliRun.Of(["place", "--ladder", "1.8:2.6", "--at", "corner", .. rest]).Error,
            StringComparison.Ordinal
        );
        CliRun none = CliRun.Of(["place", .. rest]);
        Assert.Equal(ExitCode.BadUse, none.ExitCode);
        Assert.Contains("only a --ladder needs none", none.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void MakeTellsLayersAndMinutesOfTheProcess()
    {
        using var folder = new TemporaryFolder();
        string[] made = ["make", "--object", "witness", "--set", "process.layerHeight=0.05", "-o", folder["w.stl"]];
        // 15.43 mm: 309 layers, as inspect counts them, of which 5 take 25 + 7 s and 304 take 2.5 + 7 s: 3048 s.
        Assert.Contains("layers 309 of 0.05 mm  about 51 minutes if", CliRun.Of(made).Out, StringComparison.Ordinal);
        JsonNode print = JsonNode.Parse(CliRun.Of([.. made, "--json"]).Out)!["result"]!["print"]!;
        Assert.Equal(309, (int)print["layers"]!);
        Assert.Equal(3048.0 / 60, (double)print["minutes"]!, 0.05);
        string looked = CliRun.Of("inspect", folder["w.stl"], "--layer", "0.05").Out;
        Assert.Contains("309 layers of 0.05 mm", looked, StringComparison.Ordinal);
    }
}
