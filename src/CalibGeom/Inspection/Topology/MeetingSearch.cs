using CalibGeom.Meshes;
using CalibGeom.Planar;

namespace CalibGeom.Inspection.Topology;

/// <summary>
/// Finds the pairs of triangles that may meet, in parts for all cores. Most triangles fill their boxes along the axes
/// and are found by these; long thin ones that lie aslant are found by turned boxes, and those of them about one vertex
/// by their directions from it: fans, cones and slanting cylinders of many triangles take no time that grows with their
/// square.
/// </summary>
internal sealed class MeetingSearch
{
    // The largest face of a box over the area of its triangle.
    private const double LooseBox = 32;

    // Fewer loose triangles, and fewer about a vertex, are not worth trees of their own.
    private const int LeastLoose = 256;
    private const int LeastFan = 100;

    private readonly TriangleMesh mesh;
    private readonly List<Action<Func<int, int, bool>>> parts = [];

    internal MeetingSearch(TriangleMesh mesh, int[] triangles, CancellationToken cancellation = default)
    {
        this.mesh = mesh;
        int[] loose = [.. triangles.Where(IsLoose)];
        cancellation.ThrowIfCancellationRequested();
        if (loose.Length < LeastLoose)
        {
            AddCompact(triangles);
            return;
        }
        int[] compact = [.. triangles.Where(t => !IsLoose(t))];
        cancellation.ThrowIfCancellationRequested();
        BoxTree boxes = AddCompact(compact);
        cancellation.ThrowIfCancellationRequested();
        List<TriangleFan> fans = FansOf(loose, out int[] single);
        List<OrientedBoxTree> trees = [.. fans.Select(f => new OrientedBoxTree(mesh, f.Triangles))];
        parts.AddRange(fans.Select(f => (Action<Func<int, int, bool>>)f.Pairs));
        if (single.Length > 0)
        {
            var tree = new OrientedBoxTree(mesh, single);
            parts.AddRange(tree.PairsInParts());
            parts.AddRange(trees.Select(fan => new Action<Func<int, int, bool>>(pair => tree.Pairs(fan, pair))));
            trees.Add(tree);
        }
        parts.AddRange(trees.Select(t => new Action<Func<int, int, bool>>(pair => t.Pairs(boxes, compact, pair))));
        AddBetween(fans, trees);
    }

    /// <summary>Each calls for the pairs of triangles of its part until the call returns false.</summary>
    internal IReadOnlyList<Action<Func<int, int, bool>>> Parts => parts;

    private BoxTree AddCompact(int[] triangles)
    {
        BoxTree tree = TriangleBoxes.TreeOf(mesh, triangles);
        parts.AddRange(
            tree.PairsInParts()
                .Select(part => new Action<Func<int, int, bool>>(pair =>
                    part((i, j) => pair(triangles[i], triangles[j]))
                ))
        );
        return tree;
    }

    private void AddBetween(List<TriangleFan> fans, List<OrientedBoxTree> trees)
    {
        if (fans.Count < 2)
            return;
        var boxes = new BoxTree([.. fans.Select(f => TriangleBoxes.BoxOf(mesh, f.Triangles))]);
        boxes.Pairs(
            (i, j) =>
            {
                parts.Add(pair => trees[i].Pairs(trees[j], pair));
                return true;
            }
        );
    }

    /// <summary>Whether the box along the axes says little of where a triangle is.</summary>
    private bool IsLoose(int triangle)
    {
        (Vector3D a, Vector3D b, Vector3D c) = mesh.Triangle(triangle);
        Vector3D size = Vector3D.Most(a, Vector3D.Most(b, c)) - Vector3D.Least(a, Vector3D.Least(b, c));
        double face = Math.Max(size.X * size.Y, Math.Max(size.Y * size.Z, size.Z * size.X));
        return face > LooseBox / 2 * Vector3D.Cross(b - a, c - a).Length;
    }

    /// <summary>The fans among triangles, each triangle in the largest of its corners.</summary>
    private List<TriangleFan> FansOf(int[] triangles, out int[] single)
    {
        var about = new int[mesh.VertexCount];
        foreach (int triangle in triangles)
        foreach (int corner in mesh.Triangles.Slice(3 * triangle, 3))
            about[corner]++;
        ILookup<int, int> byVertex = triangles.ToLookup(t =>
        {
            ReadOnlySpan<int> corners = mesh.Triangles.Slice(3 * t, 3);
            int largest = corners[0];
            foreach (int corner in corners)
                if (about[corner] > about[largest])
                    largest = corner;
            return about[largest] < LeastFan ? -1 : largest;
        });
        single = [.. byVertex[-1]];
        return [.. byVertex.Where(g => g.Key >= 0).Select(g => new TriangleFan(mesh, g.Key, [.. g]))];
    }
}
