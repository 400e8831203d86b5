namespace CalibGeom.Meshes;

/// <summary>A triangle with corners on the grid.</summary>
internal readonly record struct GridTriangle(GridPoint3D A, GridPoint3D B, GridPoint3D C)
{
    internal GridPoint3D this[int index] =>
        index == 0 ? A
        : index == 1 ? B
        : C;
}
