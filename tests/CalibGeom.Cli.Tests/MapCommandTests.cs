using System.Text;
using System.Text.Json.Nodes;
using CalibGeom.Objects;

namespace CalibGeom.Cli.Tests;

public class MapCommandTests
{
    private static CliRun Map(string log, params string[] more) =>
        CliRun.With(Encoding.UTF8.GetBytes(log), ["map", "-", .. more]);

    [Fact]
    public void UnevenLightIsOneAnswerWithTheDarkCorner()
    {
        CliRun run = Map(DemoLogs.Plate(0.4), "--for", "20/20.2", "--at", "40,20");
        Assert.Equal((0, ""), (run.ExitCode, run.Error));
        Assert.StartsWith("The light differs over the plate", run.Out, StringComparison.Ordinal);
        Assert.Contains("back right", run.Out, StringComparison.Ordinal);
        Assert.Contains("A 20 mm peg in a 20.2 mm hole at that place", run.Out, StringComparison.Ordinal);
        JsonNode json = JsonNode.Parse(Map(DemoLogs.Plate(0.4), "--json").Out)!;
        Assert.True((bool)json["result"]!["differs"]!);
        JsonNode weakest = json["result"]!["weakest"]!.AsArray()[0]!;
        Assert.Equal((75, 45), ((double)weakest["x"]!, (double)weakest["y"]!));
        Assert.Equal(5, json["result"]!["places"]!.AsArray().Count);
    }

    [Fact]
    public void EvenLightIsSaidWithWhatCouldHide()
    {
        CliRun run = Map(DemoLogs.Plate(0));
        Assert.Equal(0, run.ExitCode);
        Assert.StartsWith("No difference over the plate is seen in 5 coupons.", run.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("Weakest", run.Out, StringComparison.Ordinal);
        Assert.Empty(JsonNode.Parse(Map(DemoLogs.Plate(0), "--json").Out)!["result"]!["weakest"]!.AsArray());
    }

    [Fact]
    public void PictureAndGridAreWritten()
    {
        using var folder = new TemporaryFolder();
        Assert.Equal(0, Map(DemoLogs.Plate(0.4), "--plot", folder["m.svg"], "--grid", folder["m.csv"]).ExitCode);
        Assert.Contains("<svg", File.ReadAllText(folder["m.svg"]), StringComparison.Ordinal);
        Assert.StartsWith("x,y,light,mask\n", File.ReadAllText(folder["m.csv"]), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("place", 0.0, 1)]
    [InlineData("--for", 0.0, 0, "--for", "20")]
    [InlineData("--at", 0.0, 0, "--for", "20/20.2", "--at", "here")]
    [InlineData("off the plate", 0.0, 0, "--for", "20/20.2", "--at", "100,0")]
    [InlineData("--plate", 0.0, 0, "--plate", "big")]
    [InlineData("--at 40,20 says where a joint stands", 0.0, 0, "--at", "40,20")]
    [InlineData("Coupon A1 stands at X -55, Y -30 mm, off the plate of 90 x 50 mm", 0.0, 0, "--plate", "90x50")]
    [InlineData("Name the plate with --plate WIDTHxDEPTH", 0.0, 0, "--plate", "90x50")]
    public void BadUseIsSaidInPlainWords(string about, double share, int unplaced, params string[] more)
    {
        CliRun run = Map(unplaced == 1 ? DemoLogs.Witness(0, 4) : DemoLogs.Plate(share), more);
        Assert.Equal(2, run.ExitCode);
        Assert.Equal("", run.Out);
        Assert.Contains(about, run.Error, StringComparison.Ordinal);
    }

    /// <summary>
    /// A plate with coupons all over, some of them turned, read coupon by coupon: growth falls from the left to the
    /// right and is larger along X than along Y of the printer, so that a turn that was forgotten would show.
    /// </summary>
    [Fact]
    public void ReadingsOfOnePlateNeedNoLog()
    {
        using var folder = new TemporaryFolder();
        ObjectFile plate = PlacedPlate(folder);
        CliRun run = Map(folder, folder.Write("bench.csv", Head(plate) + string.Concat(Rows(plate))));
        Assert.Equal((0, ""), (run.ExitCode, run.Error));
        JsonNode result = JsonNode.Parse(run.Out)!["result"]!;
        Assert.Equal(5, result["places"]!.AsArray().Count);
        Assert.True((bool)result["differs"]!);
        Assert.Equal(75, (double)result["weakest"]![0]!["x"]!);
        Assert.Equal(
            plate.Coupons.Select(c => (c.Label, Math.Round(c.X, 4), Math.Round(c.Y, 4))),
            result["places"]!
                .AsArray()
                .Select(p => ((string)p!["coupon"]!, Math.Round((double)p["x"]!, 4), Math.Round((double)p["y"]!, 4)))
        );
    }

    /// <summary>A file a coupon says what one file says; both name the caliper's record, which counts once.</summary>
    [Fact]
    public void AFileACouponIsTheSameAsOneFile()
    {
        using var folder = new TemporaryFolder();
        File.Copy(DemoSamples.PathOf("cal.caliper.csv"), folder["cal.caliper.csv"]);
        ObjectFile plate = PlacedPlate(folder);
        string head = "# instrument cal resolution=0.01 mpe=0.02 record=cal.caliper.csv\n" + Head(plate);
        string[] rows = [.. Rows(plate).Select(r => r.TrimEnd() + ",mm,cal\n")];
        string one = Map(folder, folder.Write("all.csv", head + string.Concat(rows))).Out;
        string[] files =
        [
            .. plate.Coupons.Select(c =>
                folder.Write(
                    $"{c.Label}.csv",
                    head + string.Concat(rows.Where(r => r.StartsWith(c.Label + "/", StringComparison.Ordinal)))
                )
            ),
        ];
        CliRun several = Map(folder, files);
        Assert.Equal((0, one), (several.ExitCode, several.Out));
        CliRun twice = Map(folder, [files[0], .. files]);
        Assert.Equal((2, null), (twice.ExitCode, (string?)JsonNode.Parse(twice.Out)!["result"]));
        Assert.Contains("A1.csv is named twice. Readings count once", twice.Error, StringComparison.Ordinal);
    }

    private static CliRun Map(TemporaryFolder folder, params string[] files) =>
        CliRun.Of(["map", .. files, "--object", folder["plate.object.json"], "--json"]);

    /// <summary>The object file of a plate with five coupons, made once.</summary>
    private static readonly Lazy<string> Placed = new(() =>
    {
        using var folder = new TemporaryFolder();
        DemoParts.WriteBlock(folder["block.stl"], -5, -5, 5, 5);
        string[] spread = "--plate 150x90 --at map --count 5".Split(' ');
        Assert.Equal(0, CliRun.Of(["place", folder["block.stl"], .. spread, "-o", folder["plate.stl"]]).ExitCode);
        return File.ReadAllText(folder["plate.object.json"]);
    });

    private static ObjectFile PlacedPlate(TemporaryFolder folder)
    {
        folder.Write("plate.object.json", Placed.Value);
        return ObjectFileJson.Parse(Placed.Value, "plate.object.json");
    }

    private static string Head(ObjectFile plate) =>
        $"# digest {plate.Digest}\n# state dry\n# material rigid\nfeature,value,unit,instrument\n";

    private static IEnumerable<string> Rows(ObjectFile plate)
    {
        foreach (Feature f in plate.ToFeatures().Where(f => f.Id.Size is "outside" or "inside"))
        {
            ObjectCoupon coupon = plate.Coupons.Single(c => c.Label == f.Id.Coupon);
            double growth = 0.02 - 0.0004 * coupon.X + (f.Axis == "x" ? 0.004 : 0),
                sign = f.Id.Size == "outside" ? 1 : -1;
            yield return FormattableString.Invariant($"{f.Id},{f.Nominal + 2 * sign * growth:0.000}\n");
        }
    }

    /// <summary>What predict would set aside of one coupon is said of all of them, under the coupon's name.</summary>
    [Fact]
    public void ReadingsThatWereSetAsideAreSaid()
    {
        using var folder = new TemporaryFolder();
        ObjectFile plate = PlacedPlate(folder);
        string[] rows = [.. Rows(plate)];
        int slip = Array.FindIndex(rows, r => r.StartsWith("A2/box1.outside.x,", StringComparison.Ordinal)),
            gross = Array.FindIndex(rows, r => r.StartsWith("A4/box2.outside.y,", StringComparison.Ordinal));
        string[] off = [rows[slip].Split(',')[0], rows[gross].Split(',')[0]];
        double read = double.Parse(rows[gross].Split(',')[1], System.Globalization.CultureInfo.InvariantCulture);
        rows[slip] = $"{off[0]},80.0\n";
        rows[gross] = FormattableString.Invariant($"{off[1]},{read + 0.4:0.000}\n");
        CliRun run = Map(folder, folder.Write("bench.csv", Head(plate) + string.Concat(rows)));
        Assert.Equal(0, run.ExitCode);
        JsonNode[] said = [.. JsonNode.Parse(run.Out)!["findings"]!.AsArray().Select(f => f!)];
        Assert.Contains(said, f => (string)f["rule"]! == "reading-far-off" && (string)f["subject"]! == off[0]);
        Assert.Contains(said, f => (string)f["rule"]! == "gross-error" && (string)f["subject"]! == off[1]);
        Assert.DoesNotContain(said, f => (string)f["rule"]! == "coupon-not-read");
    }

    [Fact]
    public void ACouponThatWasNotReadIsNamed()
    {
        using var folder = new TemporaryFolder();
        ObjectFile plate = PlacedPlate(folder);
        IEnumerable<string> rows = Rows(plate).Where(r => !r.StartsWith("A5/", StringComparison.Ordinal));
        CliRun run = Map(folder, folder.Write("bench.csv", Head(plate) + string.Concat(rows)));
        Assert.Equal(0, run.ExitCode);
        JsonNode said = Assert.Single(
            JsonNode.Parse(run.Out)!["findings"]!.AsArray(),
            f => (string)f!["rule"]! == "coupon-not-read"
        )!;
        Assert.Equal(("A5", "note"), ((string)said["subject"]!, (string)said["severity"]!));
    }

    [Fact]
    public void ALabelThatTheObjectLacksIsToldFromAnObjectWithoutPlaces()
    {
        using var folder = new TemporaryFolder();
        ObjectFile plate = PlacedPlate(folder);
        IEnumerable<string> rows = Rows(plate).Select(r => r.Replace("A4/", "B4/", StringComparison.Ordinal));
        CliRun run = Map(folder, folder.Write("bench.csv", Head(plate) + string.Concat(rows)));
        Assert.Equal(2, run.ExitCode);
        Assert.Contains("The readings hold coupon B4, but the coupons of ", run.Error, StringComparison.Ordinal);
        Assert.Contains("are A1, A2, A3, A4, A5. Correct the label", run.Error, StringComparison.Ordinal);
    }

    /// <summary>Readings and a log of the same print, made with an edge offset, expect one clearance.</summary>
    [Fact]
    public void ALogSaysWhatItsReadingsSay()
    {
        using var folder = new TemporaryFolder();
        ObjectFile plate = PlacedPlate(folder);
        string readings = folder.Write("bench.csv", Head(plate) + string.Concat(Rows(plate)));
        foreach (ObjectCoupon c in plate.Coupons)
        {
            CliRun added = CliRun.Of([
                .. new[]
                {
                    "log",
                    "add",
                    readings,
                    "--to",
                    folder["plate.jsonl"],
                    "--coupon",
                    c.Label,
                    "--yes",
                    "--again",
                },
                .. new[] { "--object", folder["plate.object.json"] },
                .. "--time 2.5 --rest 1 --edge-offset -0.02 --date 2026-03-02".Split(' '),
            ]);
            Assert.True(added.ExitCode == 0, added.Error);
        }
        string[] joint = "--for 20/20.2 --at 40,20 --json".Split(' ');
        JsonNode Clearance(params string[] of) =>
            JsonNode.Parse(CliRun.Of(["map", .. of, .. joint]).Out)!["result"]!["joint"]!["clearance"]!["value"]!;
        Assert.Equal(
            (double)Clearance(readings, "--object", folder["plate.object.json"]),
            (double)Clearance(folder["plate.jsonl"]),
            1e-6
        );
    }

    /// <summary>What rounds to nothing from below is +0, as from above.</summary>
    [Fact]
    public void NoNumberHasTwoSigns()
    {
        foreach (double share in new[] { 0, 0.001, 0.002, 0.02, 0.4 })
            Assert.DoesNotContain("-+", Map(DemoLogs.Plate(share)).Out, StringComparison.Ordinal);
    }

    [Fact]
    public void ReadingsWithoutAPlaceAreRefused()
    {
        CliRun run = CliRun.Of("map", DemoSamples.PathOf("bench.csv"), "--object", "standard");
        Assert.Equal((2, ""), (run.ExitCode, run.Out));
        Assert.Contains("where the coupon without a label stood", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void StandardInputCountsOnce()
    {
        CliRun run = CliRun.Of("map", "-", "-", "--object", "standard");
        Assert.Equal((2, ""), (run.ExitCode, run.Out));
        Assert.Contains("named twice", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void AReportHoldsAnswerPictureAndInput()
    {
        using var folder = new TemporaryFolder();
        string log = folder.Write("plate.jsonl", DemoLogs.Plate(0.4));
        CliRun run = CliRun.Of("map", log, "--report", folder["map.html"], "--for", "20/20.2");
        Assert.Equal(0, run.ExitCode);
        string page = File.ReadAllText(folder["map.html"]);
        Assert.Contains(run.Out.Split('\n')[0].Split('(')[0], page, StringComparison.Ordinal);
        Assert.Contains("<svg role=\"img\"", page, StringComparison.Ordinal);
        Assert.Contains("anywhere on the plate", page, StringComparison.Ordinal);
        Assert.Contains("plate.jsonl", page, StringComparison.Ordinal);
        Assert.Equal(2, CliRun.Of("map", log, "--report", folder["map.txt"]).ExitCode);
    }
}
