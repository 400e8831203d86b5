namespace CalibGeom.Features;

/// <summary>How a size answers to growth: solids grow by it on every edge.</summary>
public enum FaceKind
{
    /// <summary>Neither: a height, a count, or a size that is no measure of growth.</summary>
    None,

    /// <summary>Solid between the faces: W (1 + s) + 2 g, read with outside jaws.</summary>
    Outside,

    /// <summary>Free between the faces: W (1 + s) - 2 g, read with inside jaws.</summary>
    Inside,
}
