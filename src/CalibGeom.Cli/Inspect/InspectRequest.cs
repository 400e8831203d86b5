namespace CalibGeom.Cli.Inspect;

/// <summary>What <c>inspect</c> was asked.</summary>
internal sealed record InspectRequest(
    IReadOnlyList<string> Files,
    double Layer,
    double Pixel,
    string? Plate,
    string? Against,
    bool Lenient,
    bool Json
);
