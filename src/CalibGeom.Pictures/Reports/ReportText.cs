namespace CalibGeom.Pictures.Reports;

/// <summary>A heading with lines of plain text under it, whose columns stay aligned. Immutable.</summary>
/// <param name="Heading">The heading.</param>
/// <param name="Text">The text; its line breaks are kept.</param>
public sealed record ReportText(string Heading, string Text);
