using CalibGeom.Meshes;

namespace CalibGeom.Solids;

/// <summary>
/// Removes triangles whose corners lie on a line: the middle corner splits the triangle behind the long side, so that
/// the surface stays closed and no vertex is lost.
/// </summary>
internal sealed class FlatTriangles
{
    private readonly IReadOnlyList<GridPoint3D> vertices;
    private readonly Dictionary<(int, int), int> owner = [];

    internal FlatTriangles(IReadOnlyList<GridPoint3D> vertices, int[] triangles)
    {
        this.vertices = vertices;
        Triangles = triangles;
        for (int t = 0; t < triangles.Length / 3; t++)
            Own(t);
    }

    internal int[] Triangles { get; }

    internal void Remove()
    {
        // Each flip shortens the longest side of a flat triangle; the bound only guards against a surface that is flat
        // all over.
        for (int pass = 0; pass < 64; pass++)
        {
            bool changed = false;
            for (int t = 0; t < Triangles.Length / 3; t++)
                if (IsFlat(t))
                {
                    Flip(t);
                    changed = true;
                }
            if (!changed)
                return;
        }
        throw new ArgumentException(
            "Turning flattened part of the surface; the solid has walls thinner than the grid.",
            "lofts"
        );
    }

    private bool IsFlat(int t) =>
        GridTriangles.Normal(vertices[Triangles[3 * t]], vertices[Triangles[3 * t + 1]], vertices[Triangles[3 * t + 2]])
        == (0, 0, 0);

    private void Flip(int t)
    {
        int longest = Enumerable
            .Range(0, 3)
            .MaxBy(i => SquaredLength(Triangles[3 * t + i], Triangles[3 * t + (i + 1) % 3]));
        int p = Triangles[3 * t + longest],
            q = Triangles[3 * t + (longest + 1) % 3],
            middle = Triangles[3 * t + (longest + 2) % 3];
        int other = owner[(q, p)];
        int far = Triangles.AsSpan(3 * other, 3).ToArray().First(v => v != p && v != q);
        if (owner.ContainsKey((far, middle)) || owner.ContainsKey((middle, far)))
            throw new ArgumentException(
                $"Turning flattened the surface at {vertices[middle]} mm; the solid has walls thinner than the grid.",
                "lofts"
            );
        owner.Remove((p, q));
        owner.Remove((q, p));
        Set(t, p, far, middle);
        Set(other, far, q, middle);
    }

    private void Set(int t, int a, int b, int c)
    {
        (Triangles[3 * t], Triangles[3 * t + 1], Triangles[3 * t + 2]) = (a, b, c);
        Own(t);
    }

    private void Own(int t)
    {
        for (int i = 0; i < 3; i++)
            owner[(Triangles[3 * t + i], Triangles[3 * t + (i + 1) % 3])] = t;
    }

    private Int128 SquaredLength(int a, int b)
    {
        GridPoint3D p = vertices[a],
            q = vertices[b];
        Int128 dx = (long)q.X - p.X,
            dy = (long)q.Y - p.Y,
            dz = (long)q.Z - p.Z;
        return dx * dx + dy * dy + dz * dz;
    }
}
