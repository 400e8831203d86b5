using System.Runtime.CompilerServices;

namespace CalibGeom.Meshes;

public sealed partial class TriangleMesh
{
    // Computed at first use and kept; whoever comes first twice computes the same.
    private StrongBox<double>? volume;
    private StrongBox<double>? area;
    private StrongBox<Box3D>? bounds;

    /// <summary>
    /// The enclosed volume in mm3, the sum of v0 . (v1 x v2) / 6 about the middle of the bounds; negative when the mesh
    /// is inside out, without meaning when it is open.
    /// </summary>
    public double Volume => (volume ??= new StrongBox<double>(MeasureVolume())).Value;

    private double MeasureVolume()
    {
        if (triangles.Length == 0)
            return 0;
        Vector3D origin = Middle();
        var sum = new CompensatedSum();
        for (int t = 0; t < TriangleCount; t++)
        {
            (Vector3D a, Vector3D b, Vector3D c) = Triangle(t);
            sum.Add(Vector3D.Dot(a - origin, Vector3D.Cross(b - origin, c - origin)));
        }
        return sum.Total / 6;
    }

    /// <summary>The surface in mm2.</summary>
    public double Area => (area ??= new StrongBox<double>(MeasureArea())).Value;

    private double MeasureArea()
    {
        var sum = new CompensatedSum();
        for (int t = 0; t < TriangleCount; t++)
        {
            (Vector3D a, Vector3D b, Vector3D c) = Triangle(t);
            sum.Add(Vector3D.Cross(b - a, c - a).Length);
        }
        return sum.Total / 2;
    }

    /// <summary>
    /// The smallest axis-parallel box round all triangles; vertices that no triangle uses do not count.
    /// </summary>
    /// <exception cref="InvalidOperationException">The mesh has no triangles.</exception>
    public Box3D Bounds => (bounds ??= new StrongBox<Box3D>(MeasureBounds())).Value;

    private Box3D MeasureBounds()
    {
        if (triangles.Length == 0)
            throw new InvalidOperationException("A mesh without triangles has no bounds.");
        Vector3D min = Vertex(triangles[0]),
            max = min;
        foreach (int index in triangles)
        {
            Vector3D v = Vertex(index);
            min = new(Math.Min(min.X, v.X), Math.Min(min.Y, v.Y), Math.Min(min.Z, v.Z));
            max = new(Math.Max(max.X, v.X), Math.Max(max.Y, v.Y), Math.Max(max.Z, v.Z));
        }
        return new(min, max);
    }

    private Vector3D Middle()
    {
        Box3D box = Bounds;
        return (box.Min + box.Max) * 0.5;
    }
}
