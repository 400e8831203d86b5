using System.Text.Json.Serialization;

namespace CalibGeom.Features;

/// <summary>A feature as it stands in JSON.</summary>
internal sealed record FeatureDocument(
    [property: JsonRequired] string Feature,
    [property: JsonRequired] double Nominal,
    [property: JsonRequired] string Unit,
    string? Axis,
    string? How
)
{
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public FaceKind? Faces { get; init; }

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public WorkStep? Step { get; init; }

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public MateDocument?[]? Mates { get; init; }

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public double? HeadDiameter { get; init; }

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public double[]? Openings { get; init; }

    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public GridSpot? Spot { get; init; }

    internal static FeatureDocument Of(Feature f) =>
        new(f.Id, f.Nominal, f.Unit, f.Axis, f.How)
        {
            Faces = f.Faces == FaceKind.None ? null : f.Faces,
            Step = f.Step,
            Mates = f.Mates.Count == 0 ? null : [.. f.Mates.Select(MateDocument.Of)],
            HeadDiameter = f.HeadDiameter,
            Openings = f.Openings.Count == 0 ? null : [.. f.Openings],
            Spot = f.Spot,
        };

    /// <exception cref="InputException">It is none.</exception>
    internal Feature ToFeature()
    {
        var feature = new Feature(
            FeatureCheck.ToId(Feature),
            Nominal,
            Unit,
            Axis ?? "",
            FeatureCheck.ToInstruction(How ?? "")
        );
        return FeatureCheck.Checked(
            feature with
            {
                // Without a step the row was written by hand, and what it leaves out follows from its id.
                Faces = Faces ?? (Step is null ? feature.Faces : FaceKind.None),
                Step = Step ?? feature.Step,
                Mates = (Mates ?? []).Select(ToMate).ToValueList(),
                HeadDiameter = HeadDiameter,
                Openings = (Openings ?? []).ToValueList(),
                Spot = Spot,
            }
        );
    }

    private static Mate ToMate(MateDocument? mate) =>
        mate?.ToMate() ?? throw new InputException(InputIds.FeatureTable, "null is no mate. Leave it out.");
}
