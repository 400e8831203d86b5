using CalibGeom.Pictures.BenchSheet;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace CalibGeom.Browser.Tests;

/// <summary>A bench sheet open in a browser, with all that the page complained of or asked the network for.</summary>
internal sealed class OpenSheet : IAsyncDisposable
{
    private readonly IBrowserContext context;
    private readonly string folder;

    private OpenSheet(IBrowserContext context, IPage page, TestObject made, string folder)
    {
        this.context = context;
        this.folder = folder;
        Page = page;
        Made = made;
    }

    internal IPage Page { get; }

    internal TestObject Made { get; }

    /// <summary>Errors, warnings, dialogs, and addresses other than the page itself.</summary>
    internal List<string> Complaints { get; } = [];

    internal string Folder => folder;

    internal static async Task<OpenSheet> Of(
        OpenBrowser open,
        string preset,
        bool phone = false,
        bool dark = false,
        string? name = null
    )
    {
        TestObject made = TestObject.Of(Presets.Find(preset)!.Spec);
        return await Of(open, BenchSheetPage.ToHtml(made, name ?? preset), made, phone, dark);
    }

    /// <summary>Another page, such as a report.</summary>
    internal static Task<OpenSheet> OfHtml(OpenBrowser open, string html, bool phone) =>
        Of(open, html, TestObject.Of(Presets.Witness), phone, dark: false);

    private static async Task<OpenSheet> Of(OpenBrowser open, string html, TestObject made, bool phone, bool dark)
    {
        string folder = Directory.CreateTempSubdirectory("calibgeom-sheet").FullName,
            path = Path.Combine(folder, "sheet.html");
        await File.WriteAllTextAsync(path, html);
        IBrowserContext context = await open.Browser.NewContextAsync(
            new BrowserNewContextOptions
            {
                ViewportSize = phone
                    ? new ViewportSize { Width = 360, Height = 760 }
                    : new() { Width = 1000, Height = 900 },
                HasTouch = phone,
                ColorScheme = dark ? ColorScheme.Dark : ColorScheme.Light,
                Locale = "de-DE",
                AcceptDownloads = true,
            }
        );
        IPage page = await context.NewPageAsync();
        var sheet = new OpenSheet(context, page, made, folder);
        string address = new Uri(path).AbsoluteUri;
        page.Console += (_, message) => sheet.Complaints.Add($"console: {message.Text}");
        page.PageError += (_, error) => sheet.Complaints.Add($"error: {error}");
        page.Request += (_, request) =>
        {
            if (request.Url != address && !request.Url.StartsWith("blob:", StringComparison.Ordinal))
                sheet.Complaints.Add($"network: {request.Url}");
        };
        page.Dialog += async (_, dialog) =>
        {
            sheet.Complaints.Add($"dialog: {dialog.Message}");
            await dialog.DismissAsync();
        };
        await page.GotoAsync(address);
        return sheet;
    }

    /// <summary>Requires that no rule of axe is broken and nothing is cut off at the side.</summary>
    internal async Task RequireAccessibleAsync()
    {
        AxeResult result = await Page.RunAxe();
        Assert.Empty(result.Violations.Select(v => $"{v.Id}: {v.Nodes[0].Html}"));
        int wide = await Page.EvaluateAsync<int>("document.documentElement.scrollWidth");
        Assert.InRange(wide, 1, Page.ViewportSize!.Width);
    }

    internal ILocator Reading(string feature, int number = 1) => Page.Locator($"[name=\"{feature}#{number}\"]");

    public async ValueTask DisposeAsync()
    {
        await context.DisposeAsync();
        Directory.Delete(folder, true);
    }
}
