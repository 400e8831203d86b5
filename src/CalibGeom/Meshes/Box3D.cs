namespace CalibGeom.Meshes;

/// <summary>An axis-parallel box, mm.</summary>
/// <param name="Min">The corner with the smallest coordinates.</param>
/// <param name="Max">The corner with the largest coordinates.</param>
public readonly record struct Box3D(Vector3D Min, Vector3D Max)
{
    /// <summary>Edge lengths, mm.</summary>
    public Vector3D Size => Max - Min;
}
