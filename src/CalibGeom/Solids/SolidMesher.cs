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
        var walls = new WallEnds[lofts.Count];
        int[] levels = Ascending.Of(lofts.SelectMany(LevelsOf));
        // Levels know nothing of each other; their triangles are put together in order, however they were shared out.
        var faces = new LevelFaces[levels.Length];
        var stoppable = new ParallelOptions { CancellationToken = cancellation };
        Parallel.For(0, levels.Length, stoppable, k => faces[k] = Level(lofts, walls, levels[k]));
        foreach (LevelFaces level in faces)
            level.AddTo(mesh);
        for (int i = 0; i < lofts.Count; i++)
            if (lofts[i].Underside is not null)
                walls[i].Bottom = AddUnderside(mesh, lofts[i]);
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
    private static LevelFaces Level(IReadOnlyList<Loft> lofts, WallEnds[] walls, int level)
    {
        int[] ending = [.. Enumerable.Range(0, lofts.Count).Where(i => lofts[i].TopLevel == level)];
        int[] beginning =
        [
            .. Enumerable.Range(0, lofts.Count).Where(i => lofts[i].Underside is null && lofts[i].BottomLevel == level),
        ];
        if (LevelRings.AreSame(ending.Select(i => lofts[i].Top), beginning.Select(i => lofts[i].Bottom)))
        {
            // Everything that ends here goes on: nothing shows, and nothing is laid over anything else.
            foreach (int i in ending)
                walls[i].Top = WallEnd.Kept(lofts[i].Top, level);
            foreach (int i in beginning)
                walls[i].Bottom = WallEnd.Kept(lofts[i].Bottom, level);
            return LevelFaces.None;
        }
        var overlay = new Arrangement(ending.Select(i => lofts[i].Top), beginning.Select(i => lofts[i].Bottom));
        var vertices = new LevelVertices(Array.ConvertAll(overlay.Vertices, p => new GridPoint3D(p, level)));
        int first = 0;
        foreach (int i in ending)
            walls[i].Top = Laid(lofts[i].Top);
        foreach (int i in beginning)
            walls[i].Bottom = Laid(lofts[i].Bottom);
        return new LevelFaces(vertices, Showing(overlay));

        WallEnd Laid(Region region)
        {
            var end = WallEnd.Laid(vertices, overlay.Snapped, first);
            first += region.Rings.Sum(r => r.Count);
            return end;
        }
    }

    private static List<(int, int, int)> Showing(Arrangement overlay)
    {
        var faces = new List<(int, int, int)>();
        foreach ((int a, int b, int c, Winding winding) in LabelledTriangulation.Of(overlay))
        {
            if (winding.First > 0 && winding.Second <= 0)
                faces.Add((a, b, c));
            else if (winding.Second > 0 && winding.First <= 0)
                faces.Add((a, c, b));
        }
        return faces;
    }

    private static WallEnd AddUnderside(MeshAssembly mesh, Loft loft)
    {
        var overlay = new Arrangement([], [loft.Bottom]);
        var vertices = new LevelVertices(
            Array.ConvertAll(overlay.Vertices, p => new GridPoint3D(p, loft.Underside!.LevelAt(p)))
        );
        new LevelFaces(vertices, Showing(overlay)).AddTo(mesh);
        return WallEnd.Laid(vertices, overlay.Snapped, 0);
    }

    private static void AddWalls(MeshAssembly mesh, Loft loft, WallEnds walls)
    {
        int outer = loft.Bottom.Outer.Count,
            count = loft.Bottom.Rings.Sum(r => r.Count);
        for (int edge = 0; edge < count; edge++)
            AddWall(mesh, walls, edge, isHole: edge >= outer);
    }

    /// <summary>
    /// One wall: a fan over the bottom chain from the top's end, and one under the top chain from the bottom's start.
    /// </summary>
    private static void AddWall(MeshAssembly mesh, WallEnds walls, int edge, bool isHole)
    {
        (int below, int above) = (walls.Bottom.Count(edge), walls.Top.Count(edge));
        for (int i = 1; i < below; i++)
            if (isHole)
                mesh.Add(Bottom(i - 1), Top(above - 1), Bottom(i));
            else
                mesh.Add(Bottom(i - 1), Bottom(i), Top(above - 1));
        for (int i = 1; i < above; i++)
            if (isHole)
                mesh.Add(Bottom(0), Top(i - 1), Top(i));
            else
                mesh.Add(Bottom(0), Top(i), Top(i - 1));

        int Bottom(int i) => walls.Bottom.IndexIn(mesh, edge, i);
        int Top(int i) => walls.Top.IndexIn(mesh, edge, i);
    }
}
