using System.Text.Json;

namespace CalibGeom.Verification.Readings;

/// <summary>Readings as they stand in JSON; every name is part of the format.</summary>
internal sealed record ReadingsDocument(
    string? Digest,
    double? Temperature,
    string? State,
    double? Expansion,
    string? Material,
    List<string>? Comments,
    List<ReadingsDocument.InstrumentDocument?>? Instruments,
    List<ReadingsDocument.ReadingDocument?>? Readings
)
{
    internal sealed record InstrumentDocument(
        string? Name,
        double? Resolution,
        double? Mpe,
        double? Repeatability,
        string? Jaw,
        double? Variation,
        string? Record
    );

    internal sealed record ReadingDocument(
        string? Feature,
        JsonElement Value,
        string? Unit,
        string? Instrument,
        string? Note
    );
}
