using CalibGeom.Verification.Readings;

namespace CalibGeom.Verification.Clearances;

/// <summary>
/// A pair of opposite faces whose distance obeys outside = W (1 + s) + 2 g or inside = W (1 + s) - 2 g.
/// </summary>
internal sealed record Face(FeatureId Id, double Nominal, bool Inside, string Axis)
{
    /// <summary>+1 where growth widens, -1 where it narrows.</summary>
    internal double Sign => Inside ? -1 : 1;

    internal Jaw Jaw => Inside ? Jaw.Inside : Jaw.Outside;

    /// <summary>The face a feature describes, or null when it is none.</summary>
    internal static Face? Of(Feature feature)
    {
        if (feature.Unit != "mm" || feature.Axis is not ("x" or "y") || !(feature.Nominal > 0))
            return null;
        return feature.Faces == FaceKind.None
            ? null
            : new Face(feature.Id, feature.Nominal, feature.Faces == FaceKind.Inside, feature.Axis);
    }
}
