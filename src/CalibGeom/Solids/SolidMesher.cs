using CalibGeom.Meshes;
using CalibGeom.Planar;

namespace CalibGeom.Solids;

/// <summary>
/// From lofts to a closed mesh. At every level the tops of lofts that end there and the bottoms of those that begin are
/// laid over each other; what only tops cover faces up, what only bottoms cover faces down, and what both cover
/// vanishes. Walls take every vertex that the overlay put on their edges, so each edge gets exactly two triangles.
/// </summary>
internal static class SolidMesher
{
    internal static MeshAssembly Assemble(IReadOnlyList<Loft> lofts, CancellationToken cancellation = default)
    {
        var mesh = new MeshAssembly();
        var walls = new WallEdges[lofts.Count];
        for (int i = 0; i < lofts.Count; i++)
            walls[i] = new WallEdges();
        int[] levels = [.. lofts.SelectMany(LevelsOf).Distinct().Order()];
        // Levels know nothing of each other; their triangles are put together in order, however they were shared out.
        var faces = new List<(GridPoint3D, GridPoint3D, GridPoint3D)>[levels.Length];
        var stoppable = new ParallelOptions { CancellationToken = cancellation };
        Parallel.For(0, levels.Length, stoppable, k => faces[k] = Level(lofts, walls, levels[k]));
        foreach ((GridPoint3D a, GridPoint3D b, GridPoint3D c) in faces.SelectMany(f => f))
            mesh.Add(a, b, c);
        for (int i = 0; i < lofts.Count; i++)
            if (lofts[i].Underside is not null)
                AddUnderside(mesh, lofts[i], walls[i]);
        for (int i = 0; i < lofts.Count; i++)
        {
            cancellation.ThrowIfCancellationRequested();
            AddWalls(mesh, lofts[i], walls[i]);
        }
        ManifoldCheck.Require(mesh);
        return mesh;
    }

    private static IEnumerable<int> LevelsOf(Loft loft) =>
        loft.Underside is null ? [loft.BottomLevel, loft.TopLevel] : [loft.TopLevel];

    /// <summary>The level faces at a height; the walls that end there get the vertices along their edges.</summary>
    private static List<(GridPoint3D, GridPoint3D, GridPoint3D)> Level(
        IReadOnlyList<Loft> lofts,
        WallEdges[] walls,
        int level
    )
    {
        int[] ending = [.. Enumerable.Range(0, lofts.Count).Where(i => lofts[i].TopLevel == level)];
        int[] beginning =
        [
            .. Enumerable.Range(0, lofts.Count).Where(i => lofts[i].Underside is null && lofts[i].BottomLevel == level),
        ];
        var faces = new List<(GridPoint3D, GridPoint3D, GridPoint3D)>();
        if (LevelRings.AreSame(ending.Select(i => lofts[i].Top), beginning.Select(i => lofts[i].Bottom)))
        {
            // Everything that ends here goes on: nothing shows, and nothing is laid over anything else.
            foreach (int i in ending)
                walls[i].Top = LevelRings.Edges(lofts[i].Top, level);
            foreach (int i in beginning)
                walls[i].Bottom = LevelRings.Edges(lofts[i].Bottom, level);
            return faces;
        }
        var overlay = new Arrangement(ending.Select(i => lofts[i].Top), beginning.Select(i => lofts[i].Bottom));
        GridPoint3D At(int v) => new(overlay.Vertices[v], level);
        foreach ((int a, int b, int c, Winding winding) in LabelledTriangulation.Of(overlay))
        {
            if (winding.First > 0 && winding.Second <= 0)
                faces.Add((At(a), At(b), At(c)));
            else if (winding.Second > 0 && winding.First <= 0)
                faces.Add((At(a), At(c), At(b)));
        }
        int ring = 0;
        GridPoint3D[][] Chains() => Array.ConvertAll(overlay.Chains[ring++], chain => Array.ConvertAll(chain, At));
        foreach (int i in ending)
            walls[i].Top = [.. lofts[i].Top.Rings.Select(_ => Chains())];
        foreach (int i in beginning)
            walls[i].Bottom = [.. lofts[i].Bottom.Rings.Select(_ => Chains())];
        return faces;
    }

    private static void AddUnderside(MeshAssembly mesh, Loft loft, WallEdges walls)
    {
        var overlay = new Arrangement([], [loft.Bottom]);
        GridPoint3D At(int v) => new(overlay.Vertices[v], loft.Underside!.LevelAt(overlay.Vertices[v]));
        foreach ((int a, int b, int c, _) in LabelledTriangulation.Of(overlay))
            mesh.Add(At(a), At(c), At(b));
        walls.Bottom = Array.ConvertAll(
            overlay.Chains,
            ring => Array.ConvertAll(ring, chain => Array.ConvertAll(chain, At))
        );
    }

    private static void AddWalls(MeshAssembly mesh, Loft loft, WallEdges walls)
    {
        for (int ring = 0; ring < walls.Bottom.Length; ring++)
        for (int edge = 0; edge < walls.Bottom[ring].Length; edge++)
            AddWall(mesh, walls.Bottom[ring][edge], walls.Top[ring][edge], ring > 0);
    }

    /// <summary>
    /// One wall: a fan over the bottom chain from the top's end, and one under the top chain from the bottom's start.
    /// </summary>
    private static void AddWall(MeshAssembly mesh, GridPoint3D[] bottom, GridPoint3D[] top, bool isHole)
    {
        for (int i = 1; i < bottom.Length; i++)
            AddTurned(mesh, bottom[i - 1], bottom[i], top[^1], isHole);
        for (int i = 1; i < top.Length; i++)
            AddTurned(mesh, bottom[0], top[i], top[i - 1], isHole);
    }

    private static void AddTurned(MeshAssembly mesh, GridPoint3D a, GridPoint3D b, GridPoint3D c, bool isHole)
    {
        if (isHole)
            mesh.Add(a, c, b);
        else
            mesh.Add(a, b, c);
    }
}
