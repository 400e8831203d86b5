using CalibGeom.Meshes;

namespace CalibGeom.Plates;

/// <summary>
/// The shadow of the parts as square cells over the plate, with the distance of each cell from it, for drawing.
/// Immutable and safe to share between threads.
/// </summary>
public sealed class ShadowMap
{
    private readonly float[] distances;

    internal ShadowMap(ShadowRaster raster)
    {
        (Columns, Rows, Cell, MinX, MinY) = (raster.Columns, raster.Rows, raster.Cell, raster.MinX, raster.MinY);
        distances = DistanceTransform.Of(Columns, Rows, (column, row) => raster[column, row]);
    }

    /// <summary>The shadow of a mesh on a plate.</summary>
    /// <param name="plate">The plate.</param>
    /// <param name="mesh">In plate coordinates.</param>
    public static ShadowMap Of(Plate plate, TriangleMesh mesh)
    {
        ArgumentNullException.ThrowIfNull(plate);
        var raster = new ShadowRaster(plate);
        PlatePart.Of("coupon", mesh).Visit(facets => raster.Mark(facets, double.PositiveInfinity));
        return new ShadowMap(raster);
    }

    /// <summary>Cells along X.</summary>
    public int Columns { get; }

    /// <summary>Cells along Y.</summary>
    public int Rows { get; }

    /// <summary>Size of a cell, mm.</summary>
    public double Cell { get; }

    /// <summary>X of the left edge of the first column, mm.</summary>
    public double MinX { get; }

    /// <summary>Y of the front edge of the first row, mm.</summary>
    public double MinY { get; }

    /// <summary>
    /// The distance from a cell's middle to the middle of the nearest cell in the shadow, mm: 0 in the shadow, infinite
    /// when there is none.
    /// </summary>
    /// <param name="column">0 to <see cref="Columns"/> - 1.</param>
    /// <param name="row">0 to <see cref="Rows"/> - 1.</param>
    /// <exception cref="ArgumentException">No such cell.</exception>
    public double Distance(int column, int row)
    {
        Require.Within(column, 0, Columns - 1, "column of the shadow", "", nameof(column));
        Require.Within(row, 0, Rows - 1, "row of the shadow", "", nameof(row));
        return distances[row * Columns + column] * Cell;
    }
}
