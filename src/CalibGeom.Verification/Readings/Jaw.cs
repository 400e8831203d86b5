namespace CalibGeom.Verification.Readings;

/// <summary>Which faces of an instrument touched the part. Each has its own systematic error.</summary>
public enum Jaw
{
    /// <summary>The outside jaws: widths, heights, thicknesses, diameters.</summary>
    Outside,

    /// <summary>The inside jaws: pockets.</summary>
    Inside,

    /// <summary>The depth rod or step faces.</summary>
    Depth,
}
