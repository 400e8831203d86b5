using CalibGeom.Objects;

namespace CalibGeom.Cli.Inspect;

/// <summary>What <c>inspect</c> was asked.</summary>
internal sealed record InspectRequest(
    IReadOnlyList<string> Files,
    double? Layer,
    string? Pixel,
    string? Plate,
    Func<string, ObjectFile>? Against,
    bool Lenient,
    bool Json
);
