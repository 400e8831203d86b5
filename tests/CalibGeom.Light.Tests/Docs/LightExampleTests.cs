using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Light.Tests.Docs;

public partial class LightExampleTests
{
    private static readonly string[] Shown =
    [
        "box1.outside.x",
        "box1.inside.x",
        "box2.inside.x",
        "span.x",
        "column1.diameter",
        "column9.diameter",
        "slot4.height",
        "slot7.height",
    ];

    [Fact]
    public void TheExampleOfThePageRuns()
    {
        // begin
        TestObject made = TestObject.Of(Presets.Standard);
        var light = new LayerLight(
            new WorkingCurve(0.12, 4),
            irradiance: 4,
            time: 2.5,
            layer: 0.05,
            baseLayers: 5,
            baseTime: 25
        );
        LightDose dose = RasterPrint.LightOf(made, pitch: 0.04, new GaussianBlur(0.02), light);
        var print = new RasterPrint(made, dose);
        double? clearance = print.Clearances()[0].Value;
        int open = print.OpenSlots();
        // end
        DocExample.RequireOn("docs/light.md");
        // Light closes 0.189 mm (at twice the Ec it was 0.12 ln 2 = 0.083 less): 0.16 and 0.20 mm close, whole layers
        // of the other six stay.
        Assert.Equal(6, open);
        Assert.Equal(
            (
                print.Sizes().Single(s => s.Feature == "box2.inside.x").Value
                - print.Sizes().Single(s => s.Feature == "box1.outside.x").Value
            ) / 2,
            clearance
        );
        string table = Table(
            made,
            print,
            new PrintedObject(made, dose.Blur, light),
            new RasterPrint(made, RasterPrint.LightOf(made, 0.04, dose.Blur, light, grey: true))
        );
        string page = File.ReadAllText(Path.Combine(Repository.Root, "docs/light.md")).ReplaceLineEndings("\n");
        RepositoryFile.RequireHolds("docs/light.md", Encoding.UTF8.GetBytes(Rows().Replace(page, table)));
    }

    /// <summary>The rows of the page's table of sizes.</summary>
    [GeneratedRegex(@"(?:^\| `[a-z0-9.]+` \| [\d.]+ \| [\d.]+ \| [\d.]+ \| [\d.]+ \|\n)+", RegexOptions.Multiline)]
    private static partial Regex Rows();

    private static string Table(TestObject made, params PredictedPrint[] prints)
    {
        var rows = new StringBuilder();
        foreach (string feature in Shown)
        {
            double? Size(int print) => prints[print].Sizes().Single(s => s.Feature == feature).Value;
            rows.Append(
                CultureInfo.InvariantCulture,
                $"| `{feature}` | {made.Features.Find(feature)!.Nominal:0.000} | {Size(1):0.000} | "
                    + $"{Size(0):0.000} | {Size(2):0.000} |\n"
            );
        }
        return rows.ToString();
    }
}
