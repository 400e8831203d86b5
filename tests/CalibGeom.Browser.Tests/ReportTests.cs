using System.Text;
using CalibGeom.Pictures.Drawings;
using CalibGeom.Pictures.Reports;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;
using CalibGeom.Verification.Clearances;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Browser.Tests;

/// <summary>Report pages and the settings card as a person opens, prints and files them.</summary>
public sealed class ReportTests(OpenBrowser open) : IClassFixture<OpenBrowser>
{
    private const string Hostile = "</pre></script><img src=x onerror=alert(1)>\"'&\u202Egnp=1+1";

    [BrowserTheory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task AReportIsReadableAloneAndNamesInItStayText(bool phone)
    {
        await using var page = await OpenSheet.OfHtml(open, Report().ToHtml(), phone);
        await page.RequireAccessibleAsync();
        Assert.Contains("=1+1", await page.Page.Locator("h1").TextContentAsync(), StringComparison.Ordinal);
        Assert.Equal(Hostile, await page.Page.Locator("dd").First.TextContentAsync());
        Assert.Contains(Hostile, await page.Page.Locator("pre").First.TextContentAsync(), StringComparison.Ordinal);
        Assert.Equal(0, await page.Page.Locator("img").CountAsync());
        Assert.NotEqual(0, await page.Page.Locator("svg[role=img]").CountAsync());
        Assert.Empty(page.Complaints);
    }

    [BrowserTheory]
    [InlineData(true)]
    public async Task TheSettingsCardHasAllItsTextAsText(bool phone)
    {
        Drawing card = new SettingsCard
        {
            Resin = Hostile,
            Printer = "bench",
            Settings =
            [
                new("exposure", "2.5 s"),
                new("rest", "1 s"),
                new("edge offset", "-0.02 mm"),
                new("layer", "0.05 mm"),
            ],
            Results = [new("clearance", "0.05 mm"), new("thinnest column", "0.4 mm")],
        }.Draw();
        using var svg = new MemoryStream();
        card.WriteSvg(svg);
        string html =
            "<!DOCTYPE html><html lang=\"en\"><head><meta charset=\"utf-8\"><title>card</title></head><body><main><h1>card</h1>"
            + Encoding.UTF8.GetString(svg.ToArray())
            + "</main></body></html>";
        await using var page = await OpenSheet.OfHtml(open, html, phone);
        string[] texts = [.. await page.Page.Locator("svg text").AllTextContentsAsync()];
        foreach (string text in new[] { Hostile, "2.5 s", "0.4 mm", "-0.02 mm" })
            Assert.Contains(texts, t => t.Contains(text, StringComparison.Ordinal));
        Assert.Equal(0, await page.Page.Locator("img").CountAsync());
        Assert.Empty(page.Complaints);
    }

    private static ReportPage Report()
    {
        TestObject made = TestObject.Of(Presets.Witness);
        var readings = new StringBuilder("# state dry\nfeature,value\n");
        foreach (Feature f in made.Features.Where(f => f.Faces != FaceKind.None && f.Unit == "mm"))
            readings.Append(FormattableString.Invariant($"{f.Id},{f.Nominal + 0.01:0.00}\n"));
        ClearancePrediction prediction = ClearancePrediction.Of(made.Features, ReadingsFile.Parse(readings.ToString()));
        return new ReportPage
        {
            Title = $"Clearances {Hostile}",
            Answer = [.. PredictionText.Sentences(prediction)],
            ToType = [new("edge offset", Hostile)],
            Findings = prediction.Findings,
            Plots = [ClearancePlot.Draw(prediction)],
            Tables = [new ReportText("Notes", Hostile)],
            Inputs = [new ReportText("readings.csv", readings.ToString())],
            Digest = made.Features.Digest,
            Version = "0",
        };
    }
}
