using CalibGeom.Meshes;
using CalibGeom.Planar;

namespace CalibGeom.TestObjects.Comparison;

/// <summary>Where lines pass through a mesh's surface.</summary>
internal sealed class MeshRays
{
    /// <summary>
    /// How far beside a triangle, as a share of its edges, a line still counts as passing it: no gap between two
    /// triangles.
    /// </summary>
    private const double Beside = 1e-9;

    /// <summary>How far round its line a triangle's box may lie, mm: more than rounding moves either.</summary>
    private const double BesideBox = 1e-4;

    private readonly Vector3D[] origins;
    private readonly Vector3D[] edges1;
    private readonly Vector3D[] edges2;
    private readonly Vector3D[] normals;
    private readonly BoxTree tree;

    internal MeshRays(TriangleMesh mesh)
    {
        int count = mesh.TriangleCount;
        tree = TriangleBoxes.TreeOf(mesh, [.. Enumerable.Range(0, count)]);
        (origins, edges1, edges2, normals) = (
            new Vector3D[count],
            new Vector3D[count],
            new Vector3D[count],
            new Vector3D[count]
        );
        for (int i = 0; i < count; i++)
        {
            (Vector3D a, Vector3D b, Vector3D c) = mesh.Triangle(i);
            (origins[i], edges1[i], edges2[i]) = (a, b - a, c - a);
            normals[i] = Vector3D.Cross(b - a, c - a);
        }
    }

    /// <summary>
    /// How far along its outward direction the surface near a face lies; null when there is none that faces the same
    /// way within a reach.
    /// </summary>
    internal double? Offset(GaugeFace face, double reach)
    {
        double? nearest = null;
        Vector3D way = new(
            Math.Abs(face.Outward.X) * reach + BesideBox,
            Math.Abs(face.Outward.Y) * reach + BesideBox,
            Math.Abs(face.Outward.Z) * reach + BesideBox
        );
        tree.Meeting(
            TriangleBoxes.BoxOf(face.Point - way, face.Point + way),
            i =>
            {
                if (
                    Vector3D.Dot(normals[i], face.Outward) > 0
                    && Crossing(i, face.Point, face.Outward) is { } at
                    && Math.Abs(at) <= reach
                    && (nearest is not { } best || (Math.Abs(at), at).CompareTo((Math.Abs(best), best)) < 0)
                )
                    nearest = at;
            }
        );
        return nearest;
    }

    /// <summary>
    /// The way along a line to where it passes a triangle, or null (after Moeller and Trumbore 1997).
    /// </summary>
    private double? Crossing(int triangle, Vector3D from, Vector3D along)
    {
        Vector3D p = Vector3D.Cross(along, edges2[triangle]);
        double determinant = Vector3D.Dot(edges1[triangle], p);
        if (determinant == 0)
            return null;
        Vector3D away = from - origins[triangle];
        double u = Vector3D.Dot(away, p) / determinant;
        if (u < -Beside || u > 1 + Beside)
            return null;
        Vector3D q = Vector3D.Cross(away, edges1[triangle]);
        double v = Vector3D.Dot(along, q) / determinant;
        return v < -Beside || u + v > 1 + Beside ? null : Vector3D.Dot(edges2[triangle], q) / determinant;
    }
}
