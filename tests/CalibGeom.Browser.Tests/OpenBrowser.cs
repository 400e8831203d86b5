using Microsoft.Playwright;

namespace CalibGeom.Browser.Tests;

/// <summary>One browser for all tests of a class.</summary>
public sealed class OpenBrowser : IAsyncLifetime
{
    private IPlaywright? playwright;
    private IBrowser? browser;

    internal IBrowser Browser => browser ?? throw new InvalidOperationException(InstalledBrowser.Missing);

    /// <inheritdoc/>
    public async Task InitializeAsync()
    {
        if (InstalledBrowser.Path is not { } path)
            return;
        playwright = await Playwright.CreateAsync();
        browser = await playwright.Chromium.LaunchAsync(
            new BrowserTypeLaunchOptions
            {
                ExecutablePath = path,
                Args =
                [
                    "--no-sandbox",
                    "--disable-gpu",
                    "--disable-quic",
                    "--no-first-run",
                    "--disable-background-networking",
                    "--disable-component-update",
                    "--disable-sync",
                ],
            }
        );
    }

    /// <inheritdoc/>
    public async Task DisposeAsync()
    {
        if (browser is not null)
            await browser.DisposeAsync();
        playwright?.Dispose();
    }
}
