using System.Runtime.Intrinsics;
using CalibGeom.Planar;

namespace CalibGeom.Meshes;

/// <summary>The bounds of a mesh's triangles, as 32-bit floats rounded outwards: no overlap is missed.</summary>
internal static class TriangleBoxes
{
    internal static BoxTree TreeOf(TriangleMesh mesh, int[] items)
    {
        var boxes = new (Vector128<float>, Vector128<float>)[items.Length];
        for (int i = 0; i < items.Length; i++)
            boxes[i] = BoxOf(mesh, items[i]);
        return new BoxTree(boxes);
    }

    /// <summary>The box between two points.</summary>
    internal static (Vector128<float> Low, Vector128<float> High) BoxOf(Vector3D a, Vector3D b) =>
        (
            Vector128.Create(Down(Math.Min(a.X, b.X)), Down(Math.Min(a.Y, b.Y)), Down(Math.Min(a.Z, b.Z)), 0),
            Vector128.Create(Up(Math.Max(a.X, b.X)), Up(Math.Max(a.Y, b.Y)), Up(Math.Max(a.Z, b.Z)), 0)
        );

    /// <summary>The box of several triangles.</summary>
    internal static (Vector128<float> Low, Vector128<float> High) BoxOf(TriangleMesh mesh, int[] triangles)
    {
        (Vector128<float> low, Vector128<float> high) = BoxOf(mesh, triangles[0]);
        foreach (int triangle in triangles)
        {
            (Vector128<float> least, Vector128<float> most) = BoxOf(mesh, triangle);
            (low, high) = (Vector128.Min(low, least), Vector128.Max(high, most));
        }
        return (low, high);
    }

    private static (Vector128<float> Low, Vector128<float> High) BoxOf(TriangleMesh mesh, int triangle)
    {
        (Vector3D a, Vector3D b, Vector3D c) = mesh.Triangle(triangle);
        return (
            Vector128.Create(Down(Least(a.X, b.X, c.X)), Down(Least(a.Y, b.Y, c.Y)), Down(Least(a.Z, b.Z, c.Z)), 0),
            Vector128.Create(Up(Most(a.X, b.X, c.X)), Up(Most(a.Y, b.Y, c.Y)), Up(Most(a.Z, b.Z, c.Z)), 0)
        );
    }

    private static double Least(double a, double b, double c) => Math.Min(a, Math.Min(b, c));

    private static double Most(double a, double b, double c) => Math.Max(a, Math.Max(b, c));

    private static float Down(double value)
    {
        float rounded = (float)value;
        return rounded > value ? MathF.BitDecrement(rounded) : rounded;
    }

    private static float Up(double value)
    {
        float rounded = (float)value;
        return rounded < value ? MathF.BitIncrement(rounded) : rounded;
    }
}
