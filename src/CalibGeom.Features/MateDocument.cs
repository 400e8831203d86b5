using System.Text.Json.Serialization;

namespace CalibGeom.Features;

/// <summary>A mate as it stands in JSON.</summary>
internal sealed record MateDocument(
    string? Axis,
    [property: JsonRequired] string Inner,
    [property: JsonRequired] string Outer,
    [property: JsonRequired] double Clearance
)
{
    internal static MateDocument Of(Mate mate) => new(mate.Axis, mate.Inner, mate.Outer, mate.Clearance);

    /// <exception cref="InputException">It is none.</exception>
    internal Mate ToMate() =>
        Axis is null or "" or "x" or "y" && double.IsFinite(Clearance)
            ? new Mate(Axis ?? "", FeatureCheck.ToId(Inner), FeatureCheck.ToId(Outer), Clearance)
            : throw new InputException(
                InputIds.FeatureTable,
                $"the mate of {Inner} and {Outer} needs the axis x, y or none and a finite clearance."
            );
}
