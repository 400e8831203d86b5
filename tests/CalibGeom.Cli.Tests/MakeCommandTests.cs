using System.Text;
using System.Text.Json.Nodes;
using CalibGeom.Cli.Shared;
using CalibGeom.Formats;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Cli.Tests;

public class MakeCommandTests
{
    [Fact]
    public void WritesAMeshAndWhatToMeasureBesideIt()
    {
        using var folder = new TemporaryFolder();
        CliRun run = CliRun.Of("make", "--object", "witness", "-o", folder["coupon.stl"]);
        Assert.Equal(ExitCode.Done, run.ExitCode);
        Assert.Equal(
            ["coupon.features.csv", "coupon.object.json", "coupon.stl"],
            Directory.GetFiles(folder.Root).Select(Path.GetFileName).Order()
        );
        FeatureTable features = FeatureTableCsv.Parse(File.ReadAllText(folder["coupon.features.csv"]));
        TestObjectSpec spec = Presets.Witness;
        Assert.Equal(SpecDigest.Of(spec), features.Digest);
        Assert.Equal(8.0, features.Find("box1.outside.x")!.Nominal);
        Assert.Equal(
            $"witness geometry {ObjectHeader.GeometryVersion} mm digest {SpecDigest.Of(spec)}",
            Encoding.ASCII.GetString(File.ReadAllBytes(folder["coupon.stl"]), 0, 80).TrimEnd()
        );
        Assert.Contains("digest", run.Out, StringComparison.Ordinal);
        Assert.Contains("nitrile gloves", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void SaysSizesLoadRatiosAndVolume()
    {
        using var folder = new TemporaryFolder();
        string text = CliRun.Of("make", "--object", "witness", "-o", folder["a.stl"]).Out;
        // (1.6 / 0.28)^2 = 32.65
        Assert.Matches(@"(?m)^1 +0\.280 +32\.7$", text);
        Assert.Matches(@"(?m)^box1 +8\.000 +8\.000 +5\.600 +0\.050$", text);
        Assert.Matches(@"triangles \d+  volume \d\.\d{3} mL  bounding box ", text);
    }

    [Fact]
    public void WhatASpecLeavesOutIsAsInThePresetStandard()
    {
        using var folder = new TemporaryFolder();
        folder.Write(
            "mine.json",
            """{"columns": {"height": 5}, /* no gap to speak of */ "nest": {"clearances": [0.063, 0.05]},}"""
        );
        CliRun run = CliRun.Of(
            "make",
            "--object",
            folder["mine.json"],
            "--set",
            "columns.height=4",
            "--json",
            "-o",
            folder["a.stl"]
        );
        JsonNode result = JsonNode.Parse(run.Out)!["result"]!;
        TestObjectSpec standard = Presets.Standard;
        var expected = standard with
        {
            Columns = standard.Columns! with { Height = 4 },
            Nest = standard.Nest! with { Clearances = [0.063, 0.05] },
        };
        Assert.Equal(expected, SpecJson.Parse(result["spec"]!.ToJsonString()));
        Assert.Equal("mine", (string?)result["name"]);
        Assert.Equal(SpecDigest.Of(expected), (string?)result["digest"]);
    }

    [Fact]
    public void JsonSaysWhatTheMeshIs()
    {
        using var folder = new TemporaryFolder();
        CliRun run = CliRun.Of("make", "--object", "witness", "--json", "-o", folder["a.stl"]);
        JsonNode result = JsonNode.Parse(run.Out)!["result"]!;
        using FileStream file = File.OpenRead(folder["a.stl"]);
        TestObject made = TestObject.Of(Presets.Witness);
        Assert.Equal((file.Length - 84) / 50, (long)result["triangles"]!);
        Assert.Equal(1, (int)result["components"]!);
        Assert.Equal(2 - 2 * made.TunnelCount, (int)result["eulerCharacteristic"]!);
        Assert.Equal(made.Solid!.Volume, (double)result["volume"]!, 1e-6 * made.Solid.Volume);
        Assert.Equal(made.Features.Count, result["features"]!.AsArray().Count);
        Assert.Empty(run.Error);
    }

    [Fact]
    public void ADashWritesTheMeshAlone()
    {
        CliRun run = CliRun.With(Encoding.UTF8.GetBytes("""{"title":"A1"}"""), "make", "--object", "-", "-o", "-");
        Assert.Equal(ExitCode.Done, run.ExitCode);
        Assert.Empty(run.Out);
        Assert.Equal(84 + 50 * BitConverter.ToInt32(run.Bytes, 80), run.Bytes.Length);
        Assert.StartsWith(
            $"spec geometry {ObjectHeader.GeometryVersion} mm digest ",
            Encoding.ASCII.GetString(run.Bytes, 0, 80),
            StringComparison.Ordinal
        );
        Assert.Contains("triangles", run.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("a.3mf", "a.features.csv")]
    [InlineData("a.calibration.3mf", "a.calibration.features.csv")]
    public void AThreeMfIsASpecAgain(string name, string features)
    {
        using var folder = new TemporaryFolder();
        string[] spec = ["--object", "witness", "--set", "title=A1"];
        Assert.Equal(ExitCode.Done, CliRun.Of(["make", .. spec, "-o", folder[name]]).ExitCode);
        Assert.Equal(ExitCode.Done, CliRun.Of(["make", .. spec, "-o", folder["direct.stl"]]).ExitCode);
        Assert.Equal(ExitCode.Done, CliRun.Of("make", "--object", folder[name], "-o", folder["again.stl"]).ExitCode);
        Assert.Equal(File.ReadAllBytes(folder["direct.stl"])[80..], File.ReadAllBytes(folder["again.stl"])[80..]);
        Assert.Equal(File.ReadAllText(folder[features]), File.ReadAllText(folder["again.features.csv"]));
    }

    [Theory]
    [InlineData("a.stl", MeshFormat.StlBinary)]
    [InlineData("a.3mf", MeshFormat.ThreeMf)]
    [InlineData("a.OBJ", MeshFormat.Obj)]
    public void TheNameDecidesTheFormat(string name, MeshFormat format)
    {
        using var folder = new TemporaryFolder();
        Assert.Equal(ExitCode.Done, CliRun.Of("make", "--object", "witness", "-o", folder[name]).ExitCode);
        MeshFile file = MeshFile.Read(folder[name]);
        Assert.Equal(format, file.Format);
        Assert.Equal(TestObject.Of(Presets.Witness).ToMesh().Volume, file.ToMesh().Volume, 1e-6);
    }

    [Theory]
    [InlineData("make")]
    [InlineData("presets")]
    public void HelpEndsWithAnExample(string command)
    {
        CliRun run = CliRun.Of(command, "--help");
        Assert.Equal(ExitCode.Done, run.ExitCode);
        Assert.Matches($@"\nExample:\n  calibgeom {command} [^\n]*\n$", run.Out.ReplaceLineEndings("\n"));
    }

    [Fact]
    public void AMarkRaisesDotsAndKeepsDigestAndTable()
    {
        using var folder = new TemporaryFolder();
        Assert.Equal(ExitCode.Done, CliRun.Of("make", "--object", "witness", "-o", folder["a.stl"]).ExitCode);
        Assert.Equal(
            ExitCode.Done,
            CliRun.Of("make", "--object", "witness", "--mark", "2", "-o", folder["b.stl"]).ExitCode
        );
        Assert.Equal(File.ReadAllBytes(folder["a.features.csv"]), File.ReadAllBytes(folder["b.features.csv"]));
        Assert.True(new FileInfo(folder["b.stl"]).Length > new FileInfo(folder["a.stl"]).Length);
        CliRun run = CliRun.Of("make", "--mark", "7", "-o", folder["c.stl"]);
        Assert.Equal(ExitCode.BadUse, run.ExitCode);
        Assert.Contains("--mark must be 0 to 6, not 7", run.Error, StringComparison.Ordinal);
        Assert.False(File.Exists(folder["c.stl"]));
    }
}
