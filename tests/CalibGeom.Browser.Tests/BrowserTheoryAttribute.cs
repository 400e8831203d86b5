namespace CalibGeom.Browser.Tests;

/// <summary>A test in a real browser; where there is none, it says so and does not run.</summary>
[AttributeUsage(AttributeTargets.Method)]
public sealed class BrowserTheoryAttribute : TheoryAttribute
{
    /// <summary>Looks for a browser.</summary>
    public BrowserTheoryAttribute()
    {
        if (InstalledBrowser.Path is null)
            Skip = InstalledBrowser.Missing;
    }
}
