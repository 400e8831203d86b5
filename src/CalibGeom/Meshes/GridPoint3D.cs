using CalibGeom.Planar;

namespace CalibGeom.Meshes;

/// <summary>A point in space in grid units.</summary>
internal readonly record struct GridPoint3D(int X, int Y, int Z)
{
    internal GridPoint3D(GridPoint p, int z)
        : this(p.X, p.Y, z) { }

    public override string ToString() =>
        FormattableString.Invariant(
            $"({Grid.ToMillimetres(X):0.####}, {Grid.ToMillimetres(Y):0.####}, {Grid.ToMillimetres(Z):0.####})"
        );
}
