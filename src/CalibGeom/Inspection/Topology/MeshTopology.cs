using CalibGeom.Meshes;

namespace CalibGeom.Inspection.Topology;

/// <summary>
/// Examines any mesh, closed or not. Corners with the same three numbers are one vertex; there is no tolerance. What
/// lies on what and what crosses what is decided exactly, so the counts do not change when a mesh is turned by right
/// angles, renumbered or reordered.
/// </summary>
public static class MeshTopology
{
    /// <summary>Crossings and contacts are counted up to this many pairs together: 1,000,000.</summary>
    public const int MostPairs = 1_000_000;

    // About the share of time before pairs are searched.
    private const double BeforePairs = 0.3;

    /// <summary>Examines a mesh.</summary>
    /// <param name="mesh">The mesh, mm.</param>
    /// <param name="progress">Told the finished part, 0 to 1, now and then.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static TopologyReport Run(
        TriangleMesh mesh,
        IProgress<double>? progress = null,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(mesh);
        TriangleMesh welded = mesh.Welded(cancellation);
        Told(0.05);
        var exact = new ExactMesh(welded);
        cancellation.ThrowIfCancellationRequested();
        DefectLog[] logs = [.. Enum.GetValues<DefectKind>().Select(k => new DefectLog(k))];
        bool[] degenerate = Degenerate(welded, exact, logs[(int)DefectKind.DegenerateTriangle], out bool[] collapsed);
        TriangleMesh surface = Without(welded, collapsed, out int[] numbers);
        cancellation.ThrowIfCancellationRequested();
        var edges = new MeshEdges(surface.Triangles, surface.VertexCount, cancellation);
        Told(0.15);
        Edges(surface, edges, numbers, logs);
        cancellation.ThrowIfCancellationRequested();
        int[] repeated = Duplicates(surface, edges, numbers, logs[(int)DefectKind.DuplicateTriangle]);
        cancellation.ThrowIfCancellationRequested();
        int[] fans = surface.Fans(edges, out int fanCount);
        cancellation.ThrowIfCancellationRequested();
        Pinches(surface, fans, numbers, logs[(int)DefectKind.PinchedVertex]);
        cancellation.ThrowIfCancellationRequested();
        List<MeshComponent> components = ComponentSurvey.Of(
            surface,
            edges,
            fans,
            fanCount,
            numbers,
            out int[] componentOf
        );
        Told(BeforePairs);
        var meetings = new SelfMeetings(
            welded,
            exact,
            Either(degenerate, repeated),
            done => progress?.Report(BeforePairs + (1 - BeforePairs) * done),
            cancellation
        );
        components = Crossed(components, meetings.Crossings, numbers, componentOf);
        foreach (MeshComponent c in components)
            if (c.IsInsideOut)
                logs[(int)DefectKind.InsideOutComponent].Add(mesh.Triangle(c.FirstTriangle).A, c.FirstTriangle);
            else if (c.IsNested)
                logs[(int)DefectKind.NestedComponent].Add(mesh.Triangle(c.FirstTriangle).A, c.FirstTriangle);
        Log(meetings.Crossings, welded, logs[(int)DefectKind.Crossing]);
        Log(meetings.Contacts, welded, logs[(int)DefectKind.Contact]);
        return new([.. logs.Select(l => l.Result())], components)
        {
            VertexCount = welded.VertexCount,
            EdgeCount = edges.Count,
            TriangleCount = welded.TriangleCount,
            Volume = components.Count > 1 ? components.Sum(c => c.OwnVolume) : welded.Volume,
            Area = welded.Area,
            PairsCapped = meetings.Capped,
        };

        void Told(double share)
        {
            cancellation.ThrowIfCancellationRequested();
            progress?.Report(share);
        }
    }

    private static bool[] Degenerate(TriangleMesh mesh, ExactMesh exact, DefectLog log, out bool[] collapsed)
    {
        ReadOnlySpan<int> t = mesh.Triangles;
        var degenerate = new bool[mesh.TriangleCount];
        collapsed = new bool[mesh.TriangleCount];
        for (int i = 0; i < degenerate.Length; i++)
        {
            int a = t[3 * i],
                b = t[3 * i + 1],
                c = t[3 * i + 2];
            collapsed[i] = a == b || b == c || c == a;
            degenerate[i] = collapsed[i] || exact.AxisOf(a, b, c) < 0;
            if (degenerate[i])
                log.Add(mesh.Vertex(a), i);
        }
        return degenerate;
    }

    /// <summary>
    /// The mesh without triangles that have two corners in one place; they border on nothing. Vertices keep their
    /// numbers.
    /// </summary>
    private static TriangleMesh Without(TriangleMesh mesh, bool[] dropped, out int[] numbers)
    {
        numbers = [.. Enumerable.Range(0, dropped.Length).Where(t => !dropped[t])];
        if (numbers.Length == dropped.Length)
            return mesh;
        var kept = new int[3 * numbers.Length];
        for (int i = 0; i < numbers.Length; i++)
            mesh.Triangles.Slice(3 * numbers[i], 3).CopyTo(kept.AsSpan(3 * i));
        return TriangleMesh.Adopt(mesh.Coordinates.ToArray(), kept);
    }

    private static void Edges(TriangleMesh mesh, MeshEdges edges, int[] numbers, DefectLog[] logs)
    {
        ReadOnlySpan<int> t = mesh.Triangles;
        var found = new List<(int HalfEdge, DefectKind Kind)>();
        for (int e = 0; e < edges.Count; e++)
        {
            int uses = edges.Uses(e),
                first = edges.HalfEdge(e, 0);
            if (uses == 1)
                found.Add((first, DefectKind.OpenEdge));
            else if (uses > 2)
                found.Add((first, DefectKind.CrowdedEdge));
            else if (t[first] == t[edges.HalfEdge(e, 1)])
                found.Add((first, DefectKind.FlippedEdge));
        }
        found.Sort();
        foreach ((int h, DefectKind kind) in found)
            logs[(int)kind].Add((mesh.Vertex(t[h]) + mesh.Vertex(t[MeshEdges.Next(h)])) * 0.5, numbers[h / 3]);
    }

    // Triangles on the same corners share all edges, so the third corners of one edge tell.
    private static int[] Duplicates(TriangleMesh mesh, MeshEdges edges, int[] numbers, DefectLog log)
    {
        ReadOnlySpan<int> t = mesh.Triangles;
        var repeated = new SortedSet<int>();
        var seen = new HashSet<int>();
        for (int e = 0; e < edges.Count; e++)
        {
            int uses = edges.Uses(e);
            if (uses < 2 || (uses == 2 && Third(t, edges.HalfEdge(e, 0)) != Third(t, edges.HalfEdge(e, 1))))
                continue;
            seen.Clear();
            for (int i = 0; i < uses; i++)
                if (!seen.Add(Third(t, edges.HalfEdge(e, i))))
                    repeated.Add(edges.HalfEdge(e, i) / 3);
        }
        foreach (int triangle in repeated)
            log.Add(mesh.Triangle(triangle).A, numbers[triangle]);
        return [.. repeated.Select(t => numbers[t])];
    }

    /// <summary>What is searched for crossings once is enough: a copy crosses what the first one crosses.</summary>
    private static bool[] Either(bool[] degenerate, int[] repeated)
    {
        bool[] left = [.. degenerate];
        foreach (int triangle in repeated)
            left[triangle] = true;
        return left;
    }

    private static int Third(ReadOnlySpan<int> triangles, int halfEdge) =>
        triangles[MeshEdges.Next(MeshEdges.Next(halfEdge))];

    private static void Pinches(TriangleMesh mesh, int[] fans, int[] numbers, DefectLog log)
    {
        ReadOnlySpan<int> t = mesh.Triangles;
        var fanOf = new int[mesh.VertexCount];
        var pinched = new bool[mesh.VertexCount];
        for (int corner = 0; corner < t.Length; corner++)
        {
            int v = t[corner];
            if (fanOf[v] == 0)
                fanOf[v] = fans[corner] + 1;
            else if (fanOf[v] != fans[corner] + 1 && !pinched[v])
            {
                pinched[v] = true;
                log.Add(mesh.Vertex(v), numbers[corner / 3]);
            }
        }
    }

    private static List<MeshComponent> Crossed(
        List<MeshComponent> components,
        IReadOnlyList<(int First, int Second)> crossings,
        int[] numbers,
        int[] componentOf
    )
    {
        if (components.Count < 2 || crossings.Count == 0)
            return components;
        var crosses = new bool[components.Count];
        foreach ((int first, int second) in crossings)
        foreach (int triangle in (ReadOnlySpan<int>)[first, second])
            if (Array.BinarySearch(numbers, triangle) is var at and >= 0)
                crosses[componentOf[at]] = true;
        return [.. components.Select((c, i) => c with { Crosses = crosses[i] })];
    }

    private static void Log(IReadOnlyList<(int First, int Second)> pairs, TriangleMesh mesh, DefectLog log)
    {
        foreach ((int first, int second) in pairs)
            log.Add(MeetingPlace.Of(mesh, first, second), first);
    }
}
