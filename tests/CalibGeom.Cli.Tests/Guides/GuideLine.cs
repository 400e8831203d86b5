namespace CalibGeom.Cli.Tests.Guides;

/// <summary>A command line of a page.</summary>
/// <param name="Text">What follows <c>calibgeom</c>.</param>
/// <param name="Shown">What the page shows as its output; null where it shows nothing.</param>
internal sealed record GuideLine(string Text, string? Shown);
