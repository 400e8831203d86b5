using CalibGeom.Meshes;

namespace CalibGeom.Inspection.Topology;

/// <summary>A point to show for two triangles that meet: the middle of the box their boxes have in common.</summary>
internal static class MeetingPlace
{
    internal static Vector3D Of(TriangleMesh mesh, int first, int second)
    {
        (Vector3D minA, Vector3D maxA) = BoxOf(mesh, first);
        (Vector3D minB, Vector3D maxB) = BoxOf(mesh, second);
        return (Max(minA, minB) + Min(maxA, maxB)) * 0.5;
    }

    private static (Vector3D Min, Vector3D Max) BoxOf(TriangleMesh mesh, int triangle)
    {
        (Vector3D a, Vector3D b, Vector3D c) = mesh.Triangle(triangle);
        return (Min(a, Min(b, c)), Max(a, Max(b, c)));
    }

    private static Vector3D Min(Vector3D a, Vector3D b) =>
        new(Math.Min(a.X, b.X), Math.Min(a.Y, b.Y), Math.Min(a.Z, b.Z));

    private static Vector3D Max(Vector3D a, Vector3D b) =>
        new(Math.Max(a.X, b.X), Math.Max(a.Y, b.Y), Math.Max(a.Z, b.Z));
}
