namespace CalibGeom.Features;

/// <summary>A feature table as it stands in JSON.</summary>
internal sealed record FeatureTableDocument(string? Digest, FeatureDocument?[]? Features)
{
    internal static FeatureTableDocument Of(FeatureTable table) =>
        new(table.Digest, [.. table.Select(FeatureDocument.Of)]);
}
