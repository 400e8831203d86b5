using CalibGeom.Meshes;

namespace CalibGeom.Inspection.Topology;

/// <summary>A point to show for two triangles that meet: the middle of the box their boxes have in common.</summary>
internal static class MeetingPlace
{
    internal static Vector3D Of(TriangleMesh mesh, int first, int second)
    {
        (Vector3D minA, Vector3D maxA) = BoxOf(mesh, first);
        (Vector3D minB, Vector3D maxB) = BoxOf(mesh, second);
        return (Vector3D.Most(minA, minB) + Vector3D.Least(maxA, maxB)) * 0.5;
    }

    private static (Vector3D Min, Vector3D Max) BoxOf(TriangleMesh mesh, int triangle)
    {
        (Vector3D a, Vector3D b, Vector3D c) = mesh.Triangle(triangle);
        return (Vector3D.Least(a, Vector3D.Least(b, c)), Vector3D.Most(a, Vector3D.Most(b, c)));
    }
}
