using CalibGeom.Meshes;
using CalibGeom.TestObjects;

namespace CalibGeom.Pictures.Objects;

/// <summary>
/// Which part of a test object each triangle belongs to, told by the object's own gauge lines: what stands on the
/// plinth falls into pieces above its top, and a piece that holds the end of a gauge line is named by it.
/// </summary>
internal sealed class ObjectParts
{
    private const double Near = 0.05;
    private readonly string[] names;

    private ObjectParts(TriangleMesh mesh, string[] names)
    {
        Mesh = mesh;
        this.names = names;
    }

    /// <summary>The object untilted.</summary>
    internal TriangleMesh Mesh { get; }

    /// <summary>
    /// The part of a triangle: <c>box1</c>, <c>column7</c>, <c>span.x</c>, <c>slots</c>, <c>squeeze</c>, or
    /// <c>plinth</c> for all else.
    /// </summary>
    internal string NameOf(int triangle) => names[triangle];

    internal static ObjectParts Of(TestObject made)
    {
        TriangleMesh mesh =
            made.Solid?.ToMesh()
            ?? throw new InputException(
                InputIds.Spec,
                "The design has an error, so there is no object to draw. "
                    + made.Findings.FirstOrDefault(f => f.Severity == Severity.Error)?.Message
            );
        double top = made.Spec.Plinth.Thickness;
        int[] piece = Pieces(mesh, top + 1e-3);
        Dictionary<int, string> named = Names(made, mesh, piece, top);
        var names = new string[mesh.TriangleCount];
        for (int t = 0; t < names.Length; t++)
            names[t] = named.GetValueOrDefault(PieceOf(mesh, piece, t), KnownFeatures.Plinth);
        return new ObjectParts(mesh, names);
    }

    /// <summary>The part that a feature is measured on.</summary>
    internal static string PartOf(FeatureId feature) =>
        feature.Part switch
        {
            KnownFeatures.Span => feature,
            KnownFeatures.Squeeze => KnownFeatures.Squeeze,
            KnownFeatures.Slot => KnownFeatures.SlotsOpen.Item,
            _ => feature.Item,
        };

    private static int PieceOf(TriangleMesh mesh, int[] piece, int triangle)
    {
        for (int k = 0; k < 3; k++)
            if (piece[mesh.Triangles[3 * triangle + k]] is >= 0 and int found)
                return found;
        return -1;
    }

    /// <summary>A number for each vertex above a height, the same for those that triangles up there join.</summary>
    private static int[] Pieces(TriangleMesh mesh, double above)
    {
        var sets = new UnionFind(mesh.VertexCount);
        ReadOnlySpan<int> corners = mesh.Triangles;
        for (int h = 0; h < corners.Length; h++)
        {
            int a = corners[h],
                b = corners[h % 3 == 2 ? h - 2 : h + 1];
            if (mesh.Vertex(a).Z > above && mesh.Vertex(b).Z > above)
                sets.Join(a, b);
        }
        return [.. Enumerable.Range(0, sets.Count).Select(v => mesh.Vertex(v).Z > above ? sets.Find(v) : -1)];
    }

    private static Dictionary<int, string> Names(TestObject made, TriangleMesh mesh, int[] piece, double top)
    {
        var boxes = new Dictionary<int, (Vector3D Min, Vector3D Max)>();
        for (int v = 0; v < piece.Length; v++)
            if (piece[v] >= 0)
            {
                Vector3D p = mesh.Vertex(v);
                (Vector3D min, Vector3D max) = boxes.GetValueOrDefault(piece[v], (p, p));
                boxes[piece[v]] = (
                    new(Math.Min(min.X, p.X), Math.Min(min.Y, p.Y), top),
                    new(Math.Max(max.X, p.X), Math.Max(max.Y, p.Y), Math.Max(max.Z, p.Z))
                );
            }
        var names = new Dictionary<int, string>();
        foreach (GaugeLine gauge in made.Gauges.Where(IsOnPart))
        foreach (Vector3D end in new[] { gauge.From.Point, gauge.To.Point })
        foreach ((int number, (Vector3D min, Vector3D max)) in boxes)
            if (Holds(min, max, end))
                names.TryAdd(number, PartOf(gauge.Feature));
        return names;
    }

    /// <summary>Heights of tunnels and slots lie in their part; that of a box ends beside it.</summary>
    private static bool IsOnPart(GaugeLine gauge) =>
        gauge.Feature.Part is KnownFeatures.Slot or KnownFeatures.Squeeze || gauge.Feature.Size != KnownFeatures.Height;

    private static bool Holds(Vector3D min, Vector3D max, Vector3D p) =>
        p.X > min.X - Near
        && p.X < max.X + Near
        && p.Y > min.Y - Near
        && p.Y < max.Y + Near
        && p.Z > min.Z - Near
        && p.Z < max.Z + Near;
}
