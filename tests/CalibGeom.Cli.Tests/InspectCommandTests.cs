using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using CalibGeom.Cli.Shared;
using CalibGeom.Formats.Stl;
using CalibGeom.Meshes;
using CalibGeom.Planar;
using CalibGeom.Solids;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Cli.Tests;

public class InspectCommandTests
{
    [Theory]
    [InlineData("inspect", "Name a mesh in STL, OBJ or 3MF.")]
    [InlineData("log show", "Name the file of a log.")]
    public void ADirectoryIsNoFile(string command, string remedy)
    {
        using var folder = new TemporaryFolder();
        CliRun run = CliRun.Of([.. command.Split(' '), folder.Root]);
        Assert.Equal(ExitCode.BadUse, run.ExitCode);
        Assert.Contains($"{folder.Root}: this is a directory. {remedy}", run.Error, StringComparison.Ordinal);
    }

    public static TheoryData<string> PresetNames => new(Presets.All.Select(p => p.Name));

    [Theory]
    [MemberData(nameof(PresetNames))]
    public void EveryPresetIsReadyToPrintAndHasTheSizesOfItsSpec(string preset)
    {
        using var folder = new TemporaryFolder();
        Assert.Equal(ExitCode.Done, CliRun.Of("make", "--object", preset, "-o", folder["a.3mf"]).ExitCode);
        CliRun run = CliRun.Of(
            "inspect",
            folder["a.3mf"],
            "--layer",
            "0.05",
            "--pixel",
            "0.035",
            "--object",
            folder["a.3mf"]
        );
        Assert.Equal(ExitCode.Done, run.ExitCode);
        Assert.StartsWith(
            $"{folder["a.3mf"]}: ready to print (0 errors, 0 warnings, ",
            run.Out,
            StringComparison.Ordinal
        );
        Assert.Contains("has the sizes of the spec", run.Out, StringComparison.Ordinal);
        Assert.Contains("note [bridge] box", run.Out, StringComparison.Ordinal);
        Assert.Empty(run.Error);
    }

    /// <summary>Two boxes that share a slice of 1 x 40 x 20 mm: 40 x 40 x 20 mm is printed.</summary>
    [Fact]
    public void WhatBodiesShareIsCountedOnceInTheLayers()
    {
        using var folder = new TemporaryFolder();
        using (FileStream file = File.Create(folder["two.stl"]))
            StlWriter.Write(file, TriangleMesh.Join([Block(0, 20.5), Block(19.5, 40)]), "two");
        Assert.Contains(
            "volume 32800 mm3 with what bodies share counted for each (32000 mm3 in the layers), surface",
            CliRun.Of("inspect", folder["two.stl"]).Out,
            StringComparison.Ordinal
        );

        static TriangleMesh Block(double from, double to) =>
            new Solid(Loft.Prism(Outline.Rectangle(from, 0, to, 40), 0, 20)).ToMesh();
    }

    [Fact]
    public void AMeshWithOtherSizesThanTheSpecIsAFinding()
    {
        using var folder = new TemporaryFolder();
        CliRun.Of("make", "--object", "witness", "--set", "nest.clearances=0.08", "-o", folder["a.stl"]);
        CliRun.Of("make", "--object", "witness", "-o", folder["witness.3mf"]);
        CliRun run = CliRun.Of("inspect", folder["a.stl"], "--object", folder["witness.3mf"]);
        Assert.Equal(ExitCode.Finding, run.ExitCode);
        Assert.Contains("error [spec-size] box2.inside.x: ", run.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("box1.outside.x", run.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("column1.diameter", run.Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("0")]
    [InlineData("-8")]
    public void AGapInTheSurfaceNamesFeatureAndLayer(string tilt)
    {
        using var folder = new TemporaryFolder();
        CliRun.Of("make", "--object", "witness", "--set", $"tilt.angle={tilt}", "-o", folder["witness.3mf"]);
        TestObject made = TestObject.Of(SpecJson.With(Presets.Witness, [$"tilt.angle={tilt}"]));
        (TriangleMesh mesh, TriangleMesh level) = (made.ToMesh(), made.Solid!.ToMesh());
        BoxPlan box = made.Boxes[1];
        int onBox = Enumerable
            .Range(0, mesh.TriangleCount)
            .First(t =>
                Corners(level, t)
                    .All(v =>
                        Math.Abs(v.X - box.X) < box.Outside.X / 2 + 1e-6
                        && Math.Abs(v.Y - box.Y) < box.Outside.Y / 2 + 1e-6
                        && v.Z > box.BandTop
                    )
            );
        int[] triangles = mesh.Triangles.ToArray();
        using (FileStream stl = File.Create(folder["gap.stl"]))
            StlWriter.Write(
                stl,
                new TriangleMesh(mesh.Coordinates, [.. triangles[..(3 * onBox)], .. triangles[(3 * onBox + 3)..]]),
                "gap"
            );
        CliRun run = CliRun.Of("inspect", folder["gap.stl"], "--object", folder["witness.3mf"]);
        Assert.Equal(ExitCode.Finding, run.ExitCode);
        Assert.Contains(
            "error [mesh-open-edge] box2: 3 edges have only one triangle",
            run.Out,
            StringComparison.Ordinal
        );
        JsonNode finding = JsonNode.Parse(
            CliRun.Of("inspect", folder["gap.stl"], "--object", folder["witness.3mf"], "--json").Out
        )!["findings"]![0]!;
        JsonArray places = finding["places"]!.AsArray();
        Assert.Equal(3, places.Count);
        Assert.All(
            places,
            p => Assert.Equal(("box2", (int)((double)p!["z"]! / 0.05)), ((string?)p["feature"], (int)p["layer"]!))
        );
    }

    private static Vector3D[] Corners(TriangleMesh mesh, int triangle)
    {
        (Vector3D a, Vector3D b, Vector3D c) = mesh.Triangle(triangle);
        return [a, b, c];
    }

    [Fact]
    public void ASuctionCupIsAWarningAndExitsWith1()
    {
        CliRun run = CliRun.With(Encoding.ASCII.GetBytes(Cup(vented: false)), "inspect", "-");
        Assert.Equal(ExitCode.Finding, run.ExitCode);
        Assert.StartsWith("-: may not print well (0 errors, 1 warning, 0 notes)", run.Out, StringComparison.Ordinal);
        Assert.Contains("warning [suction-cup] 64.00 mm3 of resin are trapped", run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void JsonIsOneEnvelopeWithEveryLayer()
    {
        CliRun run = CliRun.With(
            Encoding.ASCII.GetBytes(Cup(vented: false)),
            "inspect",
            "-",
            "--json",
            "--layer",
            "0.1"
        );
        JsonNode envelope = JsonNode.Parse(run.Out)!;
        Assert.Equal("inspect", (string?)envelope["command"]);
        Assert.Equal("suction-cup", (string?)envelope["findings"]![0]!["rule"]);
        JsonNode file = envelope["result"]![0]!;
        Assert.Equal("may not print well", (string?)file["verdict"]);
        Assert.Equal(50, file["layers"]!.AsArray().Count);
        Assert.Equal(20, (double)file["layers"]![30]!["area"]!, 1e-9);
    }

    [Theory]
    [InlineData("--layer", "abc")]
    [InlineData("--layer", "-1")]
    [InlineData("--layer", "NaN")]
    [InlineData("--pixel", "0")]
    [InlineData("--pixel", "11")]
    [InlineData("--plate", "143")]
    [InlineData("--plate", "143,89")]
    [InlineData("--plate", "143xNaN")]
    [InlineData("--plate", "150x90x0")]
    [InlineData("--plate", "1x2x3x4")]
    public void ABadValueIsBadUse(string option, string value)
    {
        CliRun run = CliRun.With(Encoding.ASCII.GetBytes(Cup(vented: false)), "inspect", "-", option, value);
        Assert.Equal(ExitCode.BadUse, run.ExitCode);
        Assert.Empty(run.Out);
        Assert.Contains(option, run.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("6x6", true)]
    [InlineData("6x6x5", true)]
    [InlineData("5.9X6", false)]
    [InlineData("6x6x4.9", false)]
    public void APartMustHaveRoomOnThePlate(string plate, bool fits)
    {
        CliRun run = CliRun.With(Encoding.ASCII.GetBytes(Cup(vented: true)), "inspect", "-", "--plate", plate);
        Assert.Equal(fits ? ExitCode.Done : ExitCode.Finding, run.ExitCode);
        Assert.Equal(!fits, run.Out.Contains("error [larger-than-plate] The part's", StringComparison.Ordinal));
    }

    /// <summary>The second example of docs/inspect.md: a block of 60 x 120 x 2 mm.</summary>
    [Fact]
    public void ThePlateFindingInTheDocsIsWhatComesOut()
    {
        const string Block =
            "v 0 0 0\nv 60 0 0\nv 60 120 0\nv 0 120 0\nv 0 0 2\nv 60 0 2\nv 60 120 2\nv 0 120 2\n"
            + "f 4 3 2 1\nf 5 6 7 8\nf 1 2 6 5\nf 2 3 7 6\nf 3 4 8 7\nf 4 1 5 8\n";
        string text = CliRun.With(Encoding.ASCII.GetBytes(Block), "inspect", "-", "--plate", "150x90").Out;
        DocsPage.RequireShows("inspect.md", text[text.IndexOf("error [", StringComparison.Ordinal)..]);
    }

    [Fact]
    public void AFileThatIsMissingOrNoMeshIsBadUse()
    {
        Assert.Equal(ExitCode.BadUse, CliRun.Of("inspect", "no-such.stl").ExitCode);
        Assert.Equal(ExitCode.BadUse, CliRun.With("hello"u8.ToArray(), "inspect", "-").ExitCode);
        Assert.Equal(ExitCode.BadUse, CliRun.Of("inspect").ExitCode);
    }

    [Fact]
    public void AMeshTooLargeForItsUnitIsBadUse()
    {
        CliRun run = CliRun.With(Encoding.ASCII.GetBytes(Cup(vented: false, scale: 1e6)), "inspect", "-");
        Assert.Equal(ExitCode.BadUse, run.ExitCode);
        Assert.Contains("millimetres", run.Error, StringComparison.Ordinal);
    }

    /// <summary>The example of docs/inspect.md.</summary>
    [Fact]
    public void TheExampleInTheDocsIsWhatComesOut()
    {
        using var folder = new TemporaryFolder();
        string path = folder.Write("cup.obj", Cup(vented: false));
        DocsPage.RequireShows(
            "inspect.md",
            CliRun.Of("inspect", path).Out.Replace(path, "cup.obj", StringComparison.Ordinal)
        );
        DocsPage.RequireShows("inspect.md", Cup(vented: false));
    }

    [Fact]
    public void TheSameCupWithAVentIsReadyToPrint()
    {
        CliRun run = CliRun.With(Encoding.ASCII.GetBytes(Cup(vented: true)), "inspect", "-");
        Assert.Equal(ExitCode.Done, run.ExitCode);
        Assert.StartsWith("-: ready to print", run.Out, StringComparison.Ordinal);
    }

    /// <summary>
    /// A 6 x 6 x 5 cup as OBJ with a 4 x 4 x 4 pocket that faces up; with a vent the pocket goes out through the front
    /// wall.
    /// </summary>
    private static string Cup(bool vented, double scale = 1)
    {
        var text = new StringBuilder();
        void Ring(double x0, double y0, double x1, double y1, double z)
        {
            foreach ((double x, double y) in new[] { (x0, y0), (x1, y0), (x1, y1), (x0, y1) })
                text.Append(CultureInfo.InvariantCulture, $"v {x * scale} {y * scale} {z * scale}\n");
        }

        if (vented)
        {
            // A U seen from above on a floor: the pocket is open at the front.
            foreach (double z in new[] { 0.0, 5 })
            foreach (
                (double x, double y) in new[] { (0.0, 0.0), (1, 0), (1, 5), (5, 5), (5, 0), (6, 0), (6, 6), (0, 6) }
            )
                text.Append(CultureInfo.InvariantCulture, $"v {x} {y} {z}\n");
            text.Append("f 8 7 6 5 4 3 2 1\nf 9 10 11 12 13 14 15 16\n");
            for (int i = 1; i <= 8; i++)
                text.Append(CultureInfo.InvariantCulture, $"f {i} {i % 8 + 1} {i % 8 + 9} {i + 8}\n");
            return text.ToString();
        }

        Ring(0, 0, 6, 6, 0);
        Ring(0, 0, 6, 6, 5);
        Ring(1, 1, 5, 5, 5);
        Ring(1, 1, 5, 5, 1);
        text.Append("f 4 3 2 1\nf 13 14 15 16\n");
        for (int ring = 0; ring < 3; ring++)
        for (int i = 1; i <= 4; i++)
            text.Append(
                CultureInfo.InvariantCulture,
                $"f {4 * ring + i} {4 * ring + i % 4 + 1} {4 * ring + i % 4 + 5} {4 * ring + i + 4}\n"
            );
        return text.ToString();
    }
}
