namespace CalibGeom.Cli.Shared;

/// <summary>A finding with the file it is about.</summary>
/// <param name="File">The file as it was named; null where it is about none.</param>
/// <param name="Finding">The finding.</param>
internal sealed record FileFinding(string? File, Finding Finding);
