using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using CalibGeom.TestObjects;
using CalibGeom.Verification.Clearances;
using CalibGeom.Verification.Readings;
using Microsoft.Playwright;

namespace CalibGeom.Browser.Tests;

/// <summary>The bench sheet as a person at the bench uses it.</summary>
public partial class BenchSheetTests(OpenBrowser open) : IClassFixture<OpenBrowser>
{
    [BrowserTheory]
    [InlineData(true, true)]
    [InlineData(false, false)]
    public async Task WhatIsFilledInIsKeptSavedAndPredictsTheSame(bool phone, bool dark)
    {
        await using OpenSheet sheet = await OpenSheet.Of(open, "standard", phone, dark);
        IPage page = sheet.Page;
        var direct = new StringBuilder(
            $"# digest {sheet.Made.Features.Digest}\n# temperature 23.5\n# state dry\n# material rigid\n"
                + "# instrument cal resolution=0.01 mpe=0.02\nfeature,value,unit,instrument\n"
        );
        await page.FillAsync("[name=temperature]", "23,5");
        await page.CheckAsync("[name=state][value=dry]");
        await page.CheckAsync("[name=material][value=rigid]");
        int n = 0;
        foreach (Feature f in sheet.Made.Features)
        {
            string id = $"{f.Id}";
            if (
                f.Unit == "mm"
                && !id.StartsWith("column", StringComparison.Ordinal)
                && !id.StartsWith("s", StringComparison.Ordinal) | id.StartsWith("span", StringComparison.Ordinal)
            )
                for (int i = 1; i <= 2; i++)
                {
                    string value = (f.Nominal + 0.01 * (1 + n++ % 4)).ToString("0.00", CultureInfo.InvariantCulture);
                    await sheet.Reading(id, i).FillAsync(value.Replace('.', ','));
                    direct.Append(CultureInfo.InvariantCulture, $"{id},{value},mm,cal\n");
                }
            else if (f.Unit == "fit")
            {
                await page.CheckAsync($"[name=\"{id}\"][value=slides]");
                direct.Append(CultureInfo.InvariantCulture, $"{id},slides,,\n");
            }
        }
        // Two columns lost on the plate, the others stood; the two lowest tunnels closed.
        foreach (string lost in new[] { "column1.stood", "column2.stood" })
            await page.ClickAsync($"[data-cell=\"{lost}\"]");
        await page.ClickAsync("#standing");
        foreach (ColumnPlan c in sheet.Made.Columns)
            direct.Append(
                CultureInfo.InvariantCulture,
                $"column{c.Number}.stood,{(c.Number <= 2 ? "lost" : "wash")},,\n"
            );
        ILocator comb = page.Locator(".row[data-feature=\"slots.open\"]");
        await comb.Locator("button[data-openings=open]").ClickAsync();
        foreach (int closed in new[] { 1, 2 })
            await comb.Locator($"[data-cell=\"slots.open#{closed}\"]").ClickAsync();
        double all = sheet.Made.Features.Find("slots.open")!.Nominal;
        direct.Append(CultureInfo.InvariantCulture, $"slots.open,{all - 2},,\n");

        await page.ReloadAsync();
        IDownload download = await page.RunAndWaitForDownloadAsync(() => page.ClickAsync("button[type=submit]"));
        Assert.Equal("standard.csv", download.SuggestedFilename);
        string path = Path.Combine(sheet.Folder, "saved.csv");
        await download.SaveAsAsync(path);
        ReadingSet saved = ReadingsFile.Read(path),
            given = ReadingsFile.Parse(direct.ToString());
        Assert.Equal(Rows(given), Rows(saved));
        Assert.Equal((23.5, PartState.Dry, Material.Rigid), (saved.Temperature, saved.State, saved.Material));
        Assert.Equal(
            PredictionText.Sentences(ClearancePrediction.Of(sheet.Made.Features, given)),
            PredictionText.Sentences(ClearancePrediction.Of(sheet.Made.Features, saved))
        );
        Assert.Empty(sheet.Complaints);

        static string[] Rows(ReadingSet set) =>
            [
                .. set
                    .Readings.Select(r => $"{r.Feature} {r.Value} {r.Instrument} {r.Fit} {r.Stage}")
                    .Order(StringComparer.Ordinal),
            ];
    }

    [BrowserTheory]
    [InlineData("box1.outside.x", "80,2", "doubled zero")]
    [InlineData("box1.outside.x", "0.315", "inches")]
    [InlineData("box2.inside.x", "11,22", "inside and outside swapped")]
    [InlineData("box1.outside.x", "8,005", "Was it 8.05?")]
    [InlineData("box1.outside.x", "8,,05", "no number")]
    public async Task ASlipIsSaidWhileItIsTyped(string feature, string typed, string said)
    {
        await using OpenSheet sheet = await OpenSheet.Of(open, "standard");
        await sheet.Reading(feature).PressSequentiallyAsync(typed);
        ILocator row = sheet.Page.Locator($".row[data-feature=\"{feature}\"]");
        Assert.Contains(said, await row.Locator(".slip").TextContentAsync(), StringComparison.Ordinal);
        Assert.Equal("true", await sheet.Reading(feature).GetAttributeAsync("aria-invalid"));
        await sheet.Reading(feature).FillAsync("");
        Assert.Equal("", await row.Locator(".slip").TextContentAsync());
        Assert.Empty(sheet.Complaints);
    }

    [BrowserTheory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task TheObjectTurnsAndNamesWhatIsTapped(bool phone)
    {
        await using OpenSheet sheet = await OpenSheet.Of(open, "standard", phone);
        IPage page = sheet.Page;
        ILocator canvas = page.Locator("#object");
        await canvas.ScrollIntoViewIfNeededAsync();
        string first = await Picture();
        await canvas.FocusAsync();
        await page.Keyboard.PressAsync("ArrowLeft");
        string keyed = await Picture();
        Assert.NotEqual(first, keyed);
        LocatorBoundingBoxResult box = (await canvas.BoundingBoxAsync())!;
        await page.Mouse.MoveAsync(box.X + box.Width / 2, box.Y + box.Height / 2);
        await page.Mouse.DownAsync();
        await page.Mouse.MoveAsync(box.X + box.Width / 2 + 60, box.Y + box.Height / 2 - 20, new() { Steps = 4 });
        await page.Mouse.UpAsync();
        Assert.NotEqual(keyed, await Picture());

        var named = new HashSet<string>(StringComparer.Ordinal);
        for (int i = 1; i < 12 && !named.Contains("box3"); i++)
        for (int j = 1; j < 8 && !named.Contains("box3"); j++)
        {
            box = (await canvas.BoundingBoxAsync())!;
            float x = box.X + box.Width * i / 12,
                y = box.Y + box.Height * j / 8;
            if (phone)
                await page.Touchscreen.TapAsync(x, y);
            else
                await page.Mouse.ClickAsync(x, y);
            named.Add((await page.Locator("#named").TextContentAsync())!);
        }
        Assert.Contains("box3", named);
        Assert.NotEqual(0, await page.Locator(".row.lit[data-part=box3]").CountAsync());
        Assert.Empty(sheet.Complaints);

        async Task<string> Picture()
        {
            await page.WaitForTimeoutAsync(120);
            return await page.EvaluateAsync<string>("document.getElementById('object').toDataURL()");
        }
    }

    [BrowserTheory]
    [InlineData("A4")]
    [InlineData("Letter")]
    public async Task EveryPresetPrintsOnOnePage(string format)
    {
        foreach (string preset in CalibGeom.TestObjects.Specs.Presets.All.Select(p => p.Name))
        {
            await using OpenSheet sheet = await OpenSheet.Of(open, preset);
            byte[] pdf = await sheet.Page.PdfAsync(new PagePdfOptions { Format = format, PrintBackground = true });
            int pages = PageObject().Count(Encoding.Latin1.GetString(pdf));
            Assert.True(pages == 1, $"{preset} takes {pages} pages of {format}");
        }
    }

    [BrowserTheory]
    [InlineData("standard", true, true)]
    [InlineData("standard", false, false)]
    [InlineData("limit", true, false)]
    public async Task NothingStandsInAnyonesWay(string preset, bool phone, bool dark)
    {
        await using OpenSheet sheet = await OpenSheet.Of(open, preset, phone, dark);
        await sheet.Reading("box1.outside.x").FillAsync("80,2");
        await sheet.RequireAccessibleAsync();
        Assert.Empty(sheet.Complaints);
    }

    [BrowserTheory]
    [InlineData("</script><img src=x onerror=alert(1)>\"'&")]
    public async Task NamesAndNotesStayText(string hostile)
    {
        await using OpenSheet sheet = await OpenSheet.Of(open, "witness", name: hostile);
        Assert.Contains(hostile, await sheet.Page.Locator("h1").TextContentAsync(), StringComparison.Ordinal);
        await sheet.Page.FillAsync("[name=notes]", hostile);
        await sheet.Reading("box1.outside.x").FillAsync(hostile);
        await sheet.Page.ReloadAsync();
        Assert.Equal(hostile, await sheet.Page.InputValueAsync("[name=notes]"));
        Assert.Equal(0, await sheet.Page.Locator("img").CountAsync());
        Assert.Empty(sheet.Complaints);
    }

    [GeneratedRegex(@"/Type\s*/Page[^s]")]
    private static partial Regex PageObject();
}
