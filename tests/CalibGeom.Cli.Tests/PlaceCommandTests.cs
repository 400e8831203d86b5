using System.Text.Json.Nodes;
using CalibGeom.Cli.Shared;
using CalibGeom.Formats;
using CalibGeom.Formats.Stl;
using CalibGeom.Meshes;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Cli.Tests;

public class PlaceCommandTests
{
    [Fact]
    public void WritesPartsUnchangedWithTheCouponAndItsFeatures()
    {
        using var folder = new TemporaryFolder();
        DemoParts.WriteHolder(folder["holder.stl"], 0, 10);
        DemoParts.WriteTray(folder["tray.stl"], 0, -25);
        byte[] holder = File.ReadAllBytes(folder["holder.stl"]),
            tray = File.ReadAllBytes(folder["tray.stl"]);
        CliRun run = CliRun.Of(
            "place",
            folder["holder.stl"],
            folder["tray.stl"],
            "--plate",
            "150x90",
            "--json",
            "-o",
            folder["plate.stl"]
        );
        Assert.Equal(ExitCode.Done, run.ExitCode);
        byte[] plate = File.ReadAllBytes(folder["plate.stl"]);
        byte[] facets = [.. holder[84..], .. tray[84..]];
        Assert.Equal(facets, plate[84..(84 + facets.Length)]);
        JsonNode result = JsonNode.Parse(run.Out)!["result"]!;
        Assert.True((double)result["distance"]! >= 2);
        TriangleMesh witness = TestObject.Of(Presets.Witness).ToMesh();
        Assert.Equal(witness.TriangleCount * 50, plate.Length - 84 - facets.Length);
        JsonNode coupon = result["coupons"]![0]!;
        var expected = witness.Transform(
            Affine3D
                .TurnZ((int)coupon["turn"]!)
                .Then(
                    Affine3D.Shift(
                        new((double)coupon["shift"]![0]!, (double)coupon["shift"]![1]!, (double)coupon["shift"]![2]!)
                    )
                )
        );
        using var stream = new MemoryStream();
        StlWriter.Write(stream, expected, "");
        Assert.Equal(stream.ToArray()[84..], plate[(84 + facets.Length)..]);
        Assert.Equal(
            8,
            FeatureTableCsv.Parse(File.ReadAllText(folder["plate.features.csv"])).Find("box1.outside.x")!.Nominal
        );
        Assert.Equal(
            ["holder.stl", "plate.features.csv", "plate.object.json", "plate.stl", "tray.stl"],
            Directory.GetFiles(folder.Root).Select(Path.GetFileName).Order()
        );
    }

    [Fact]
    public void AMapNamesAndLabelsEachCoupon()
    {
        using var folder = new TemporaryFolder();
        DemoParts.WriteBlock(folder["block.stl"], -20, 14, 20, 26);
        CliRun run = CliRun.Of(
            "place",
            folder["block.stl"],
            "--plate",
            "150x90",
            "--at",
            "map",
            "--count",
            "3",
            "-o",
            folder["plate.3mf"]
        );
        Assert.Equal(ExitCode.Done, run.ExitCode);
        Assert.Equal(
            ["block", "witness A1", "witness A2", "witness A3"],
            MeshFile.Read(folder["plate.3mf"]).Objects.Select(o => o.Name)
        );
        FeatureTable features = FeatureTableCsv.Parse(File.ReadAllText(folder["plate.features.csv"]));
        foreach (string label in (string[])["A1", "A2", "A3"])
            Assert.NotNull(features.Find($"{label}/box1.outside.x"));
        Assert.Null(features.Find("box1.outside.x"));
        Assert.Contains("witness A2: middle at", run.Out, StringComparison.Ordinal);
        MeshFile read = MeshFile.Read(folder["plate.3mf"]);
        Assert.NotEqual(read.Objects[1].Mesh.Volume, read.Objects[2].Mesh.Volume, 6);
    }

    /// <summary>A label lengthens the plinth and moves parts: each coupon is compared with its own.</summary>
    [Theory]
    [InlineData("plate.stl", "map")]
    [InlineData("plate.3mf", "map")]
    [InlineData("plate.3mf", "near")]
    public void APlateHasTheSizesOfItsObject(string output, string at)
    {
        using var folder = new TemporaryFolder();
        DemoParts.WriteBlock(folder["block.stl"], -20, 14, 20, 26);
        string plate = folder[output];
        string[] count = at == "map" ? ["--count", "3"] : [];
        string[] line = ["place", folder["block.stl"], "--plate", "150x90", "--at", at, .. count, "-o", plate];
        Assert.Equal(ExitCode.Done, CliRun.Of(line).ExitCode);
        CliRun run = CliRun.Of("inspect", plate, "--against", "--pixel", "0.2", "--layer", "0.2");
        Assert.NotEqual(ExitCode.BadUse, run.ExitCode);
        Assert.Contains("has the sizes of the spec", run.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("spec-size", run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void AnObjectFileOfAnotherPlateIsNotWrittenOver()
    {
        using var folder = new TemporaryFolder();
        DemoParts.WriteBlock(folder["block.stl"], -20, 14, 20, 26);
        string[] line = ["place", folder["block.stl"], "--plate", "150x90", "-o"];
        Assert.Equal(ExitCode.Done, CliRun.Of([.. line, folder["plate.stl"]]).ExitCode);
        Assert.Equal(ExitCode.Done, CliRun.Of([.. line, folder["plate.stl"]]).ExitCode);
        string before = File.ReadAllText(folder["plate.object.json"]);
        string[][] others =
        [
            [.. line, folder["plate.stl"], "--at", "map", "--count", "2"],
            [.. line, folder["plate.3mf"]],
        ];
        foreach (string[] other in others)
        {
            CliRun run = CliRun.Of(other);
            Assert.Equal(ExitCode.BadUse, run.ExitCode);
            Assert.Contains("plate.object.json holds the object of plate.stl", run.Error, StringComparison.Ordinal);
            Assert.Contains("--force", run.Error, StringComparison.Ordinal);
            Assert.Equal(before, File.ReadAllText(folder["plate.object.json"]));
            Assert.False(File.Exists(folder["plate.3mf"]));
        }
        Assert.Equal(ExitCode.Done, CliRun.Of([.. others[0], "--force"]).ExitCode);
        Assert.NotEqual(before, File.ReadAllText(folder["plate.object.json"]));
    }

    [Fact]
    public void NoRoomIsAFindingThatSaysWhatIsMissingAndWhatWouldFit()
    {
        using var folder = new TemporaryFolder();
        DemoParts.WriteBlock(folder["block.stl"], -40, -30, -4, 30);
        CliRun run = CliRun.Of(
            "place",
            folder["block.stl"],
            "--plate",
            "80x60",
            "--object",
            "standard",
            "-o",
            folder["plate.stl"],
            "--picture",
            folder["plate.svg"]
        );
        Assert.Equal(ExitCode.Finding, run.ExitCode);
        Assert.Contains("[no-room]", run.Out, StringComparison.Ordinal);
        Assert.Matches(@"so \d+\.\d x \d+\.\d mm is missing\.", run.Out);
        Assert.Contains("The preset limit fits.", run.Out, StringComparison.Ordinal);
        Assert.Equal(["block.stl"], Directory.GetFiles(folder.Root).Select(Path.GetFileName));
        CliRun map = CliRun.Of(
            "place",
            folder["block.stl"],
            "--plate",
            "80x60",
            "--at",
            "map",
            "-o",
            folder["plate.stl"]
        );
        Assert.Equal(ExitCode.Finding, map.ExitCode);
        Assert.Matches(@"Only [1-4] of 5 coupons find room, spread over the plate, in rows or in columns\.", map.Out);
    }

    [Fact]
    public void ADesignThatCannotWorkIsAFinding()
    {
        using var folder = new TemporaryFolder();
        DemoParts.WriteBlock(folder["block.stl"], -5, -5, 5, 5);
        CliRun run = CliRun.Of(
            "place",
            folder["block.stl"],
            "--plate",
            "150x90",
            "--set",
            "nest.sizes=8,8.4",
            "-o",
            folder["plate.stl"]
        );
        Assert.Equal(ExitCode.Finding, run.ExitCode);
        Assert.Contains("error [", run.Out, StringComparison.Ordinal);
        Assert.False(File.Exists(folder["plate.stl"]));
    }

    [Fact]
    public void ABrokenPartGetsACouponAndAWarning()
    {
        using var folder = new TemporaryFolder();
        folder.Write("open.obj", "v 0 0 0\nv 9 0 0\nv 0 9 0\nv 0 0 9\nf 1 3 2\nf 1 2 4\nf 2 3 4\n");
        CliRun run = CliRun.Of("place", folder["open.obj"], "--plate", "150x90", "-o", folder["plate.stl"]);
        Assert.Equal(ExitCode.Done, run.ExitCode);
        Assert.Contains("warning [part-open] open.obj:", run.Out, StringComparison.Ordinal);
        Assert.True(File.Exists(folder["plate.stl"]));
    }

    [Fact]
    public void PartsThatFloatOrReachBeyondThePlateAreSaid()
    {
        using var folder = new TemporaryFolder();
        DemoParts.WriteBlock(folder["low.stl"], -5, -5, 5, 5);
        DemoParts.WriteBlock(folder["high.stl"], 60, 20, 80, 30, 4.5);
        string text = CliRun
            .Of("place", folder["low.stl"], folder["high.stl"], "--plate", "150x90x16", "-o", folder["plate.stl"])
            .Out;
        Assert.Contains("note [part-floats] high.stl: The part floats 4.5 mm", text, StringComparison.Ordinal);
        Assert.Contains(
            "warning [part-off-plate] high.stl: The part reaches 5 mm beyond the plate.",
            text,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "warning [part-too-high] high.stl: The part reaches 0.5 mm higher",
            text,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void ACouponThatStandsAsHighAsALiftedPartIsSaid()
    {
        using var folder = new TemporaryFolder();
        DemoParts.WriteBlock(folder["high.stl"], -5, -5, 5, 5, 3.5);
        string[] args = ["place", folder["high.stl"], "--plate", "150x90", "-o"];
        string text = CliRun.Of([.. args, folder["plate.stl"]]).Out;
        Assert.Contains("standing on Z 3.500", text, StringComparison.Ordinal);
        Assert.Contains(
            "warning [part-floats] high.stl: The part's lowest point is 3.5 mm above z = 0, and the coupon "
                + "stands as high.",
            text,
            StringComparison.Ordinal
        );
        string zero = CliRun.Of([.. args, folder["zero.stl"], "--base", "zero"]).Out;
        Assert.Contains("standing on Z 0.000", zero, StringComparison.Ordinal);
        Assert.Contains(
            "note [part-floats] high.stl: The part floats 3.5 mm above the height at which the coupon stands.",
            zero,
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("part.stl", "part.stl", "top.svg")]
    [InlineData("part.stl", "./part.stl", "top.svg")]
    [InlineData("part.features.csv", "part.stl", "top.svg")]
    [InlineData("top.svg", "plate.stl", "top.svg")]
    [InlineData("link.stl", "part.stl", "top.svg")]
    public void APartIsNeverOverwritten(string part, string output, string picture)
    {
        using var folder = new TemporaryFolder();
        string real = part == "link.stl" ? "part.stl" : part;
        DemoParts.WriteBlock(folder[real], -5, -5, 5, 5);
        if (part != real)
            File.CreateSymbolicLink(folder[part], folder[real]);
        byte[] before = File.ReadAllBytes(folder[real]);
        int files = Directory.GetFiles(folder.Root).Length;
        CliRun run = CliRun.Of(
            "place",
            folder[part],
            "--plate",
            "150x90",
            "--picture",
            folder[picture],
            "-o",
            folder[output]
        );
        Assert.Equal(ExitCode.BadUse, run.ExitCode);
        Assert.Contains("would be overwritten", run.Error, StringComparison.Ordinal);
        Assert.Single(run.Error.Trim().Split('\n'));
        Assert.Equal(before, File.ReadAllBytes(folder[real]));
        Assert.Equal(files, Directory.GetFiles(folder.Root).Length);
    }

    [Fact]
    public void StandardInputAndOutputServe()
    {
        using var folder = new TemporaryFolder();
        DemoParts.WriteBlock(folder["block.stl"], -5, -5, 5, 5);
        byte[] block = File.ReadAllBytes(folder["block.stl"]);
        CliRun run = CliRun.With(block, "place", "-", "--plate", "150x90", "-o", "-");
        Assert.Equal(ExitCode.Done, run.ExitCode);
        Assert.Empty(run.Out);
        Assert.Equal(block[84..], run.Bytes[84..block.Length]);
        CliRun alone = CliRun.With(block, "place", "-", "--plate", "150x90", "--alone", "-o", "-");
        Assert.Equal(run.Bytes[block.Length..], alone.Bytes[84..]);
    }

    [Fact]
    public void CentredPartsKeepTheirCoordinates()
    {
        using var folder = new TemporaryFolder();
        DemoParts.WriteBlock(folder["block.stl"], 400, 200, 440, 230);
        CliRun run = CliRun.Of(
            "place",
            folder["block.stl"],
            "--plate",
            "150x90",
            "--centre",
            "--at",
            "corner",
            "--json",
            "--alone",
            "-o",
            folder["coupon.stl"]
        );
        Assert.Equal(ExitCode.Done, run.ExitCode);
        JsonNode result = JsonNode.Parse(run.Out)!["result"]!;
        Assert.Equal(420 - 75 + 2, (double)result["coupons"]![0]!["min"]![0]!, 3);
        Assert.Equal(215 - 45 + 2, (double)result["coupons"]![0]!["min"]![1]!, 3);
        Assert.Equal(
            (double)result["coupons"]![0]!["max"]![0]!,
            StlReader.Read(folder["coupon.stl"]).Bounds.Max.X,
            1e-6
        );
    }

    [Fact]
    public void ThePlateAndPixelsOfTheSpecAreTaken()
    {
        using var folder = new TemporaryFolder();
        DemoParts.WriteBlock(folder["block.stl"], 10, 10, 30, 30);
        CliRun run = CliRun.Of(
            "place",
            folder["block.stl"],
            "--object",
            "witness",
            "--set",
            "process.pixelPitch=0.03,0.04",
            "--set",
            "process.plate=100,70,90",
            "--origin",
            "corner",
            "--at",
            "80.01,50",
            "--json",
            "-o",
            folder["plate.stl"]
        );
        Assert.Equal(ExitCode.Done, run.ExitCode);
        JsonNode result = JsonNode.Parse(run.Out)!["result"]!;
        Assert.Equal((0, 70), ((double)result["plate"]!["min"]![0]!, (double)result["plate"]!["max"]![1]!));
        Assert.InRange(
            Math.Abs(Math.IEEERemainder((double)result["coupons"]![0]!["shift"]![0]! - 50, 0.03)),
            0,
            1.0 / 8192
        );
    }

    [Fact]
    public void ProgressIsDrawnForAPersonOnly()
    {
        using var folder = new TemporaryFolder();
        DemoParts.WriteHolder(folder["holder.stl"], 0, 0);
        using var error = new StringWriter();
        using var bytes = new MemoryStream();
        var io = new CommandIo
        {
            Out = TextWriter.Null,
            Error = error,
            OpenInput = () => Stream.Null,
            OpenOutput = () => bytes,
            Interactive = true,
            Clock = new SlowClock(),
        };
        Assert.Equal(
            ExitCode.Done,
            CommandHost.Run(["place", folder["holder.stl"], "--plate", "150x90", "-o", folder["plate.stl"]], io)
        );
        Assert.Matches("100%[^\n]*holder.stl", error.ToString());
        Assert.DoesNotContain(
            "%",
            CliRun.Of("place", folder["holder.stl"], "--plate", "150x90", "-o", folder["plate.stl"]).Error,
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("none.stl", "There is no file")]
    [InlineData("cut.stl", "cut.stl")]
    [InlineData("words.txt", "words.txt")]
    public void AnUnreadablePartEndsWithTwoAndNoOutput(string part, string message)
    {
        using var folder = new TemporaryFolder();
        DemoParts.WriteBlock(folder["block.stl"], 10, 10, 30, 30);
        File.WriteAllBytes(folder["cut.stl"], File.ReadAllBytes(folder["block.stl"])[..^7]);
        folder.Write("words.txt", "these are no triangles");
        folder.Write("plate.stl", "kept");
        CliRun run = CliRun.Of(
            "place",
            "--force",
            folder["block.stl"],
            folder[part],
            "--plate",
            "150x90",
            "-o",
            folder["plate.stl"],
            "--picture",
            folder["plate.png"]
        );
        Assert.Equal(ExitCode.BadUse, run.ExitCode);
        Assert.Empty(run.Out);
        Assert.Contains(message, run.Error, StringComparison.Ordinal);
        Assert.Single(run.Error.Trim().Split('\n'));
        Assert.Equal("kept", File.ReadAllText(folder["plate.stl"]));
        Assert.False(File.Exists(folder["plate.png"]) || File.Exists(folder["plate.features.csv"]));
    }

    [Theory]
    [InlineData("", "--plate 150x90")]
    [InlineData("--plate 150", "--plate 150")]
    [InlineData("--plate 150,5x90", "150,5")]
    [InlineData("--plate NaNx89", "NaN")]
    [InlineData("--plate 150x90 --margin 45", "--margin 45")]
    [InlineData("--plate 150x90 --gap 0", "--gap")]
    [InlineData("--plate 150x90 --gap abc", "abc")]
    [InlineData("--plate 150x90 --at here", "--at here")]
    [InlineData("--plate 150x90 --at 1,2,3", "--at 1,2,3")]
    [InlineData("--plate 150x90 --count 3", "--count")]
    [InlineData("--plate 150x90 --at map --count 0", "--count 0")]
    [InlineData("--plate 150x90 --at map --count 2.5", "--count 2.5")]
    [InlineData("--plate 150x90 --pixel 0", "--pixel")]
    [InlineData("--plate 150x90 --pixel 1,1,1", "--pixel 1,1,1")]
    [InlineData("--plate 150x90 --origin left", "--origin left")]
    [InlineData("--plate 150x90 --base high", "--base high")]
    [InlineData("--plate 150x90 --object huge", "huge")]
    [InlineData("--plate 150x90 --picture a.gif", "a.gif")]
    [InlineData("--plate 150x90 --frobnicate", "--frobnicate")]
    public void BadValuesEndWithTwoAndOneLine(string options, string message)
    {
        using var folder = new TemporaryFolder();
        DemoParts.WriteBlock(folder["block.stl"], 10, 10, 30, 30);
        CliRun run = CliRun.Of([
            "place",
            folder["block.stl"],
            "-o",
            folder["plate.stl"],
            .. options.Split(' ', StringSplitOptions.RemoveEmptyEntries),
        ]);
        Assert.Equal(ExitCode.BadUse, run.ExitCode);
        Assert.Empty(run.Out);
        Assert.Contains(message, run.Error, StringComparison.Ordinal);
        Assert.Equal(["block.stl"], Directory.GetFiles(folder.Root).Select(Path.GetFileName));
    }

    [Fact]
    public void HelpNeedsNothingElseAndEndsWithAnExample()
    {
        CliRun run = CliRun.Of("place", "--help");
        Assert.Equal(ExitCode.Done, run.ExitCode);
        Assert.EndsWith(
            "calibgeom place holder.stl --plate 150x90 --gap 2 --picture plate.svg -o plate.stl",
            run.Out.TrimEnd(),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void OutputsAreStlOr3Mf()
    {
        using var folder = new TemporaryFolder();
        DemoParts.WriteBlock(folder["block.stl"], 10, 10, 30, 30);
        Assert.Contains(
            ".3mf",
            CliRun.Of("place", folder["block.stl"], "--plate", "150x90", "-o", folder["plate.obj"]).Error,
            StringComparison.Ordinal
        );
        Assert.Contains(
            "standard output",
            CliRun.Of("place", folder["block.stl"], "--plate", "150x90", "--json", "-o", "-").Error,
            StringComparison.Ordinal
        );
        Assert.Equal(
            ExitCode.BadUse,
            CliRun.Of("place", "-", "-", "--plate", "150x90", "-o", folder["plate.stl"]).ExitCode
        );
        Assert.Equal(ExitCode.BadUse, CliRun.Of("place", folder["block.stl"], "--plate", "150x90").ExitCode);
    }

    /// <summary>A damaged part is refused; what is whole of it is taken when that is asked for, and said.</summary>
    [Fact]
    public void ADamagedPartIsTakenLeniently()
    {
        using var folder = new TemporaryFolder();
        DemoParts.WriteHolder(folder["holder.stl"], -26, 24);
        byte[] whole = File.ReadAllBytes(folder["holder.stl"]);
        File.WriteAllBytes(folder["cut.stl"], whole[..^70]);
        string[] line = ["place", folder["cut.stl"], "--plate", "143x89", "-o", folder["plate.stl"]];
        CliRun refused = CliRun.Of(line);
        Assert.Equal(ExitCode.BadUse, refused.ExitCode);
        Assert.Contains("leniently", refused.Error, StringComparison.Ordinal);
        Assert.False(File.Exists(folder["plate.stl"]));
        CliRun taken = CliRun.Of([.. line, "--lenient"]);
        Assert.Equal(ExitCode.Done, taken.ExitCode);
        Assert.Contains("warning [left-out]", taken.Out, StringComparison.Ordinal);
        Assert.True(File.Exists(folder["plate.stl"]));
    }
}
