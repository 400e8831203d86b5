namespace CalibGeom.Meshes;

public sealed partial class TriangleMesh
{
    /// <summary>
    /// The mesh moved. A transform that mirrors also reverses every triangle, so that outward stays outward.
    /// </summary>
    /// <param name="transform">What to do with each vertex.</param>
    /// <exception cref="ArgumentException">A moved coordinate is not finite.</exception>
    public TriangleMesh Transform(Affine3D transform)
    {
        var moved = new double[3 * vertexCount];
        for (int v = 0; v < VertexCount; v++)
            (moved[3 * v], moved[3 * v + 1], moved[3 * v + 2]) = transform.Apply(Vertex(v));
        if (transform.Determinant >= 0)
            return new(moved, triangles, true);
        return new(moved, Reversed(triangles), true);
    }

    /// <summary>
    /// Several meshes in one, in order: the vertices of the first keep their indices, those of the next follow. Nothing
    /// is welded.
    /// </summary>
    /// <param name="meshes">The meshes; none gives <see cref="Empty"/>.</param>
    public static TriangleMesh Join(IReadOnlyList<TriangleMesh> meshes)
    {
        ArgumentNullException.ThrowIfNull(meshes);
        if (meshes.Count == 1)
            return meshes[0];
        var joined = new double[meshes.Sum(m => 3 * m.vertexCount)];
        var indices = new int[meshes.Sum(m => m.triangles.Length)];
        int vertexAt = 0,
            indexAt = 0;
        foreach (TriangleMesh mesh in meshes)
        {
            mesh.Coordinates.CopyTo(joined.AsSpan(3 * vertexAt));
            foreach (int v in mesh.triangles)
                indices[indexAt++] = v + vertexAt;
            vertexAt += mesh.VertexCount;
        }
        return new(joined, indices, false);
    }

    /// <summary>The mesh turned inside out: every triangle's corners in the opposite order.</summary>
    public TriangleMesh Reverse() => new(coordinates, vertexCount, Reversed(triangles), false);

    private static int[] Reversed(int[] triangles)
    {
        var reversed = new int[triangles.Length];
        for (int i = 0; i < triangles.Length; i += 3)
            (reversed[i], reversed[i + 1], reversed[i + 2]) = (triangles[i], triangles[i + 2], triangles[i + 1]);
        return reversed;
    }
}
