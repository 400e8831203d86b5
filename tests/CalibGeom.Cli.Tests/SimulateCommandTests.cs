using System.Text.Json.Nodes;

namespace CalibGeom.Cli.Tests;

public class SimulateCommandTests
{
    private static readonly string[] Light =
    [
        "simulate",
        "--dp",
        "0.12",
        "--ec",
        "8",
        "--irradiance",
        "4",
        "--blur",
        "0.02",
    ];

    [Fact]
    public void BaseLayersAreThoseOfTheSpec()
    {
        string[] args = [.. Light, "--time", "2.5"];
        string set = Of("--set", "process.baseLayers=40", "--set", "process.baseTime=200");
        Assert.Equal(Of("--base-layers", "40", "--base-time", "200"), set);
        Assert.NotEqual(Of(), set);
        string Of(params string[] more) =>
            CliRun
                .Of([.. args, .. more])
                .Out.Split('\n')
                .Single(l => l.StartsWith("squeeze.open", StringComparison.Ordinal));
    }

    [Fact]
    public void PixelsChangeTheSizesAndWhatTheyCannotDoIsSaid()
    {
        string[] args = [.. Light, "--time", "2.5"];
        CliRun lit = CliRun.Of([.. args, "--pixel", "0.035"]);
        Assert.Equal(0, lit.ExitCode);
        // 8 mm are 228.6 pixels of 0.035 mm: they print as 228 or 229, and grow by 2 x 12.099 micrometres like any
        // edge.
        Assert.Matches("box1.outside.x,8.0(04198|39198)\n", lit.Out);
        Assert.NotEqual(lit.Out, CliRun.Of([.. args, "--pixel", "0.035", "--grey"]).Out);
        foreach (
            (string[] more, string said) in new (string[], string)[]
            {
                (["--grey"], "--pixel P[,Q]"),
                (["--plot", "light.svg"], "--pixel P[,Q]"),
                (["--pixel", "0.035", "--plot", "light.gif"], ".svg, .png or .pdf"),
                (["--pixel", "0.001"], "0.005 to 0.5"),
                (["--pixel", "0.035", "--edge-offset", "2"], "edge offset"),
            }
        )
        {
            CliRun wrong = CliRun.Of([.. args, .. more]);
            Assert.Equal((2, ""), (wrong.ExitCode, wrong.Out));
            Assert.Contains(said, wrong.Error, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void AnExposureThatDoesNotReachTheLayerBelowIsSaid()
    {
        // Cd = 0.12 ln(10 / 8) = 0.0268 mm < 0.05 mm; 8 exp(0.05 / 0.12) / 4 = 3.034 s reach it.
        CliRun thin = CliRun.Of([.. Light, "--time", "2.5", "--json"]);
        JsonNode finding = JsonNode.Parse(thin.Out)!["findings"]![0]!;
        Assert.Equal(("cure-depth", "warning"), ((string)finding["rule"]!, (string)finding["severity"]!));
        Assert.Empty(thin.Error);
        string said = CliRun.Of([.. Light, "--time", "2.5"]).Error;
        Assert.Contains("cures 0.027 mm", said, StringComparison.Ordinal);
        Assert.Contains("3.03 s or longer", said, StringComparison.Ordinal);
        Assert.Equal("", CliRun.Of([.. Light, "--time", "3.04"]).Error);
    }

    [Fact]
    public void ThePersonsCaliperIsApartFromThePrint()
    {
        string[] args = [.. Light[..4], "4", .. Light[5..], "--time", "2.5"];
        string Size(params string[] more) =>
            CliRun
                .Of([.. args, .. more])
                .Out.Split('\n')
                .Single(l => l.StartsWith("box1.outside.x,", StringComparison.Ordinal));
        double Value(params string[] more) =>
            double.Parse(Size(more).Split(',')[1], System.Globalization.CultureInfo.InvariantCulture);
        // The same prints read by another person differ by the bias of their jaws.
        double Mean(string caliper) =>
            Enumerable.Range(1, 6).Average(i => Value("--seed", $"{i}", "--caliper-seed", caliper));
        Assert.True(Math.Abs(Mean("1") - Mean("5")) > 0.004);
        double Width(string between)
        {
            double[] values =
            [
                .. Enumerable.Range(1, 6).Select(i => Value("--seed", $"{i}", "--between-prints", between)),
            ];
            return values.Max() - values.Min();
        }
        Assert.True(Width("0.08") > 2 * Width("0"));
    }

    [Fact]
    public void NoSizeIsNegativeAndRestLetsTheSqueezeOut()
    {
        // A tunnel that light nearly closes once read as less than nothing.
        CliRun run = CliRun.Of(
            "simulate",
            "--dp",
            "0.1",
            "--ec",
            "4",
            "--irradiance",
            "4",
            "--time",
            "2.5",
            "--rest",
            "0.5",
            "--seed",
            "2"
        );
        Assert.Equal(0, run.ExitCode);
        Assert.DoesNotMatch(@",-\d", run.Out);
        string Squeezed(string rest) =>
            CliRun
                .Of(
                    "simulate",
                    "--dp",
                    "0.12",
                    "--ec",
                    "4",
                    "--irradiance",
                    "4",
                    "--time",
                    "2.5",
                    "--squeeze",
                    "0.6",
                    "--rest",
                    rest
                )
                .Out.Split('\n')
                .Single(l => l.StartsWith("squeeze.open,", StringComparison.Ordinal));
        Assert.True(
            int.Parse(Squeezed("6").Split(',')[1], System.Globalization.CultureInfo.InvariantCulture)
                > int.Parse(Squeezed("0").Split(',')[1], System.Globalization.CultureInfo.InvariantCulture)
        );
    }
}
