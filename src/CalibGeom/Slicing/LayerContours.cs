using CalibGeom.Meshes;
using CalibGeom.Planar;

namespace CalibGeom.Slicing;

/// <summary>
/// The section of a mesh in the middle of one layer: closed contours in the mesh's x and y, counter-clockwise round
/// material, clockwise round holes; where shells overlap, contours do too. Immutable and safe to share between threads.
/// </summary>
public sealed class LayerContours
{
    private readonly Vector2D[] points;
    private readonly int[] ends;

    internal LayerContours(int index, double z, Vector2D[] points, int[] ends, int gapCount)
    {
        Index = index;
        Z = z;
        this.points = points;
        this.ends = ends;
        GapCount = gapCount;
        var sum = new CompensatedSum();
        for (int i = 0; i < ends.Length; i++)
            sum.Add(Vector2D.SignedArea(this[i]));
        Area = sum.Total;
    }

    /// <summary>The layer's number, from 0 at the plate.</summary>
    public int Index { get; }

    /// <summary>The height of the section, mm, in the coordinates of the mesh.</summary>
    public double Z { get; }

    /// <summary>The number of contours.</summary>
    public int Count => ends.Length;

    /// <summary>The number of contours that the mesh leaves open and that were closed with a straight line.</summary>
    public int GapCount { get; }

    /// <summary>The sum of the contours' signed areas, mm2: the area of the layer where no shells overlap.</summary>
    public double Area { get; }

    /// <summary>The vertices of all contours, mm, one contour after another.</summary>
    public ReadOnlySpan<Vector2D> Points => points;

    /// <summary>
    /// The contours with every edge moved along its own normal, as a slicer's edge offset does: corners stay sharp up
    /// to twice the distance. What vanishes turns inside out and covers nothing.
    /// </summary>
    /// <param name="outward">How far material grows, mm; negative: shrinks.</param>
    public LayerContours Moved(double outward)
    {
        var moved = new Vector2D[points.Length];
        for (int i = 0, start = 0; i < ends.Length; start = ends[i++])
            ContourOffset.Move(this[i], outward, moved.AsSpan(start, ends[i] - start));
        return new LayerContours(Index, Z, moved, ends, GapCount);
    }

    /// <summary>The vertices of one contour, mm; the last joins the first.</summary>
    /// <param name="index">0 to <see cref="Count"/> - 1.</param>
    /// <exception cref="IndexOutOfRangeException">No such contour.</exception>
    public ReadOnlySpan<Vector2D> this[int index]
    {
        get
        {
            int start = index == 0 ? 0 : ends[index - 1];
            return points.AsSpan(start, ends[index] - start);
        }
    }
}
