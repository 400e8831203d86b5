using CalibGeom.Meshes;
using CalibGeom.Planar;

namespace CalibGeom.Solids;

/// <summary>Collects triangles of grid points and gives equal points one index.</summary>
internal sealed class MeshAssembly
{
    private int[] slots = new int[1024];
    private readonly List<GridPoint3D> vertices = [];
    private readonly List<int> triangles = [];

    internal List<GridPoint3D> Vertices => vertices;

    internal List<int> Triangles => triangles;

    /// <summary>Adds a triangle of vertices that have an index.</summary>
    internal void Add(int a, int b, int c)
    {
        triangles.Add(a);
        triangles.Add(b);
        triangles.Add(c);
    }

    internal TriangleMesh ToMesh()
    {
        var coordinates = new double[3 * vertices.Count];
        for (int v = 0; v < vertices.Count; v++)
        {
            coordinates[3 * v] = Grid.ToMillimetres(vertices[v].X);
            coordinates[3 * v + 1] = Grid.ToMillimetres(vertices[v].Y);
            coordinates[3 * v + 2] = Grid.ToMillimetres(vertices[v].Z);
        }
        return TriangleMesh.Adopt(coordinates, [.. triangles]);
    }

    /// <summary>The index that a point has, or now gets.</summary>
    internal int Index(GridPoint3D p)
    {
        int mask = slots.Length - 1,
            slot = Hash(p) & mask;
        for (; slots[slot] > 0; slot = (slot + 1) & mask)
            if (vertices[slots[slot] - 1] == p)
                return slots[slot] - 1;
        vertices.Add(p);
        slots[slot] = vertices.Count;
        if (2 * vertices.Count > slots.Length)
            Grow();
        return vertices.Count - 1;
    }

    private void Grow()
    {
        slots = new int[2 * slots.Length];
        for (int v = 0; v < vertices.Count; v++)
        {
            int slot = Hash(vertices[v]) & (slots.Length - 1);
            while (slots[slot] > 0)
                slot = (slot + 1) & (slots.Length - 1);
            slots[slot] = v + 1;
        }
    }

    private static int Hash(GridPoint3D p)
    {
        ulong h = ((ulong)(uint)p.X << 32 | (uint)p.Y) * 0x9E3779B97F4A7C15;
        h = (h ^ h >> 29 ^ (uint)p.Z) * 0xC2B2AE3D27D4EB4F;
        return (int)(h >> 33);
    }
}
