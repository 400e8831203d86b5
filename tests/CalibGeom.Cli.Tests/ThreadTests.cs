using System.Globalization;
using System.Text.Json.Nodes;
using CalibGeom.Cli.Shared;
using CalibGeom.Formats;
using CalibGeom.Meshes;
using CalibGeom.Objects;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Cli.Tests;

/// <summary>One object from make or place to the log, found by its digest all the way.</summary>
[Collection(CurrentDirectory.Name)]
public class ThreadTests
{
    [Fact]
    public void AnObjectOfOnesOwnIsFoundFromTheSheetToTheLog()
    {
        using var folder = new TemporaryFolder();
        CurrentDirectory.Within(
            folder,
            () =>
            {
                Done(
                    "make",
                    "--object",
                    "witness",
                    "--set",
                    "nest.clearances=0.08",
                    "--set",
                    "process.layerHeight=0.03",
                    "--set",
                    "process.baseLayers=7",
                    "-o",
                    "mine.stl"
                );
                Done("readings", "-o", "bench.csv");
                string sheet = File.ReadAllText("bench.csv");
                Assert.Contains($"# digest {Load("mine.object.json").Digest}\n", sheet, StringComparison.Ordinal);
                Fill("bench.csv", ("box1.outside.x", 8.02), ("box2.inside.x", 8.12));
                JsonNode inside = Json("predict", "bench.csv", "--json")["coupons"]![0]!["measured"]!
                    .AsArray()
                    .Single(m => (string)m!["feature"]! == "box2.inside.x")!;
                Assert.Equal(
                    Load("mine.object.json").ToFeatures().Find("box2.inside.x")!.Nominal,
                    (double)inside["nominal"]!,
                    1e-9
                );
                JsonNode trial = Json(
                    "log",
                    "add",
                    "bench.csv",
                    "--to",
                    "log.jsonl",
                    "--time",
                    "2.5",
                    "--rest",
                    "1",
                    "--date",
                    "2026-03-01",
                    "--json"
                )["trial"]!;
                Assert.Equal(
                    (0.03, 7, 0.08, "2026-03-01"),
                    (
                        (double)trial["layer"]!,
                        (int)trial["baseLayers"]!,
                        (double)trial["joints"]![0]!["designed"]!,
                        (string)trial["date"]!
                    )
                );
                Done("inspect", "mine.stl", "--against");
                Done("tune", "log.jsonl");
                // Another digest anywhere is told, never guessed at.
                File.WriteAllText(
                    "bench.csv",
                    File.ReadAllText("bench.csv")
                        .Replace("# digest ", "# digest 0", StringComparison.Ordinal)
                        .Remove(25, 1)
                );
                Assert.Contains("Wanted is the .object.json", Bad("predict", "bench.csv"), StringComparison.Ordinal);
                Assert.Contains(
                    "Wanted is the .object.json",
                    Bad("log", "add", "bench.csv", "--to", "log.jsonl"),
                    StringComparison.Ordinal
                );
                File.WriteAllText(
                    "mine.object.json",
                    File.ReadAllText("mine.object.json").Replace("0.08", "0.09", StringComparison.Ordinal)
                );
                Assert.Contains(
                    "changed by hand",
                    Bad("readings", "--object", "mine.object.json"),
                    StringComparison.Ordinal
                );
            }
        );
    }

    [Theory]
    [InlineData("0.04", 0)]
    [InlineData("0.03,0.05", 0)]
    [InlineData("0.04", 5)]
    [InlineData("0.04", -7)]
    public void ReadingsMadeFromThePlateItselfGiveBackTheDesignedClearances(string pitch, int tilt)
    {
        using var folder = new TemporaryFolder();
        CurrentDirectory.Within(
            folder,
            () =>
            {
                // Room for the coupon only when it is turned, unless pitches differ.
                DemoParts.WriteBlock("block.stl", 0, 0, 4, 4);
                TestObjectSpec witness = Presets.Witness;
                var spec = witness with { Nest = witness.Nest! with { Clearances = [new PerAxis(0.05, 0.09)] } };
                File.WriteAllText("coupon.json", SpecJson.ToText(spec));
                Done(
                    "place",
                    "block.stl",
                    "--plate",
                    pitch.Contains(',', StringComparison.Ordinal) || tilt > 0 ? "90x90" : "25x80",
                    "--at",
                    "corner",
                    "--object",
                    "coupon.json",
                    "--set",
                    $"process.pixelPitch={pitch}",
                    "--set",
                    $"tilt.angle={tilt}",
                    "-o",
                    "plate.stl"
                );
                ObjectFile file = Load("plate.object.json");
                ObjectCoupon coupon = Assert.Single(file.Coupons);
                if (pitch.Contains(',', StringComparison.Ordinal) || tilt == 0)
                    Assert.Equal(pitch.Contains(',', StringComparison.Ordinal) ? 0 : 90, coupon.Turn);
                FeatureTable table = file.ToFeatures();
                Done("readings", "-o", "bench.csv");
                Fill("bench.csv", [.. Measure("plate.stl", file, coupon)]);
                foreach (
                    JsonNode? axis in Json("predict", "bench.csv", "--json")["coupons"]![0]!["joints"]![0]![
                        "axes"
                    ]!.AsArray()
                )
                {
                    Mate mate = table.Find("joint1.fit")!.Mates.Single(m => m.Axis == (string)axis!["axis"]!);
                    Assert.Equal(mate.Clearance, (double)axis!["clearance"]!["value"]!, 2e-3);
                }
                Done("inspect", "plate.stl", "--against", "--layer", "0.05");
            }
        );
    }

    [Fact]
    public void PartsThatOverlapAreTold()
    {
        using var folder = new TemporaryFolder();
        CurrentDirectory.Within(
            folder,
            () =>
            {
                DemoParts.WriteBlock("a.stl", 0, 0, 20, 20);
                DemoParts.WriteBlock("b.stl", 10, 10, 20, 20);
                DemoParts.WriteBlock("c.stl", 40, 0, 48, 8);
                JsonNode[] told = Findings(
                    "place",
                    "a.stl",
                    "b.stl",
                    "c.stl",
                    "a.stl",
                    "--plate",
                    "150x90",
                    "--json",
                    "-o",
                    "plate.stl"
                );
                Assert.Equal(3, told.Length);
                Assert.All(told, f => Assert.Equal("warning", (string)f["severity"]!));
                Assert.Contains("a.stl and b.stl", (string)told[0]["message"]!, StringComparison.Ordinal);
                Assert.Empty(Findings("place", "a.stl", "c.stl", "--plate", "150x90", "--json", "-o", "plate.stl"));
            }
        );
    }

    private static JsonNode[] Findings(params string[] args) =>
        JsonNode.Parse(Done(args).Out)!["findings"]!
            .AsArray()
            .Where(f => (string)f!["rule"]! == "parts-overlap")
            .Select(f => f!)
            .ToArray();

    /// <summary>
    /// Widths of the boxes on the plate along the printer's X and Y, square to the faces of a tilted object, from rays
    /// through the mesh that was written.
    /// </summary>
    private static IEnumerable<(string, double)> Measure(string mesh, ObjectFile file, ObjectCoupon coupon)
    {
        TestObject made = TestObject.Of(file.Spec);
        // The plate as the object's own coordinates see it: the coupon's shift, turn and tilt taken back.
        TriangleMesh own = MeshFile
            .Read(mesh)
            .ToMesh()
            .Transform(Affine3D.Shift(new(-coupon.X, -coupon.Y, -coupon.Z)))
            .Transform(Affine3D.TurnZ(-coupon.Turn))
            .Transform(made.Untilt());
        foreach (Feature f in file.ToFeatures().Where(f => f.Id.Part == "box" && f.Axis is "x" or "y"))
        {
            BoxPlan box = made.Boxes.Single(b => b.Number == f.Id.Number);
            var middle = new Vector3D(box.X, box.Y, (box.BandBottom + box.BandTop) / 2);
            string along =
                coupon.Turn == 0 ? f.Axis
                : f.Axis == "x" ? "y"
                : "x";
            yield return (f.Id.ToString(), Width(own, middle, along, f.Faces == FaceKind.Outside));
        }
    }

    /// <summary>
    /// The first surfaces met from the middle both ways (inside), or the last (outside), within 15 mm.
    /// </summary>
    private static double Width(TriangleMesh mesh, Vector3D from, string axis, bool outside)
    {
        double[] hits = Hits(mesh, from, axis).Where(t => Math.Abs(t) < 15).ToArray();
        double[] up = hits.Where(t => t > 0).Order().ToArray(),
            down = hits.Where(t => t < 0).OrderDescending().ToArray();
        return outside ? up[1] - down[1] : up[0] - down[0];
    }

    private static IEnumerable<double> Hits(TriangleMesh mesh, Vector3D from, string axis)
    {
        bool x = axis == "x";
        var seen = new List<double>();
        for (int i = 0; i < mesh.TriangleCount; i++)
        {
            (Vector3D a, Vector3D b, Vector3D c) = mesh.Triangle(i);
            (double A, double Z, double T)[] p = [At(a), At(b), At(c)];
            double d = (p[1].A - p[0].A) * (p[2].Z - p[0].Z) - (p[2].A - p[0].A) * (p[1].Z - p[0].Z);
            if (Math.Abs(d) < 1e-12)
                continue;
            double u = (-p[0].A * (p[2].Z - p[0].Z) + p[0].Z * (p[2].A - p[0].A)) / d,
                v = (-p[0].Z * (p[1].A - p[0].A) + p[0].A * (p[1].Z - p[0].Z)) / d;
            if (u < -1e-9 || v < -1e-9 || u + v > 1 + 1e-9)
                continue;
            double t = p[0].T + u * (p[1].T - p[0].T) + v * (p[2].T - p[0].T);
            if (seen.TrueForAll(s => Math.Abs(s - t) > 1e-4))
                seen.Add(t);
        }
        return seen;

        (double, double, double) At(Vector3D q) =>
            x ? (q.Y - from.Y, q.Z - from.Z, q.X - from.X) : (q.X - from.X, q.Z - from.Z, q.Y - from.Y);
    }

    private static void Fill(string path, params (string Id, double Value)[] values)
    {
        string text = File.ReadAllText(path);
        foreach ((string id, double value) in values)
        {
            Assert.Contains($"\n{id},,", text, StringComparison.Ordinal);
            text = text.Replace(
                $"\n{id},,",
                string.Create(CultureInfo.InvariantCulture, $"\n{id},{value:0.####},"),
                StringComparison.Ordinal
            );
        }
        File.WriteAllText(path, text);
    }

    private static ObjectFile Load(string path)
    {
        using FileStream stream = File.OpenRead(path);
        return ObjectFileJson.Read(stream, path);
    }

    private static JsonNode Json(params string[] args) => JsonNode.Parse(Done(args).Out)!["result"]!;

    private static CliRun Done(params string[] args)
    {
        CliRun run = CliRun.Of(args);
        Assert.True(
            run.ExitCode is ExitCode.Done or ExitCode.Finding && (run.ExitCode == 0 || args[0] == "inspect"),
            string.Join(' ', args) + "\n" + run.Out + run.Error
        );
        if (args[0] == "inspect")
            Assert.DoesNotContain("spec-size", run.Out, StringComparison.Ordinal);
        return run;
    }

    private static string Bad(params string[] args)
    {
        CliRun run = CliRun.Of(args);
        Assert.Equal(ExitCode.BadUse, run.ExitCode);
        return run.Error;
    }
}
