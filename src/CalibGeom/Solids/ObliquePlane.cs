using CalibGeom.Planar;

namespace CalibGeom.Solids;

/// <summary>The plane z = z0 + slopeX x + slopeY y (mm).</summary>
internal sealed record ObliquePlane(double Z0, double SlopeX, double SlopeY)
{
    /// <summary>Height over a grid point, in grid units, to the nearest.</summary>
    internal int LevelAt(GridPoint p) => Grid.FromMillimetres(Z0 + SlopeX * p.XMillimetres + SlopeY * p.YMillimetres);
}
