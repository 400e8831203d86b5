using CalibGeom.Meshes;

namespace CalibGeom.Inspection.Topology;

/// <summary>
/// Measures the components of a mesh. A vertex in which fans meet counts once for each fan, as if they were drawn
/// apart.
/// </summary>
internal static class ComponentSurvey
{
    internal static List<MeshComponent> Of(
        TriangleMesh mesh,
        MeshEdges edges,
        int[] fans,
        int fanCount,
        int[] numbers,
        out int[] component
    )
    {
        component = mesh.Components(edges, out int count);
        int[] componentOf = component;
        int[][] members = Members(componentOf, count);
        int[] edgeCount = new int[count],
            vertexCount = new int[count];
        bool[] open = new bool[count],
            unbalanced = new bool[count];
        ReadOnlySpan<int> t = mesh.Triangles;
        for (int e = 0; e < edges.Count; e++)
        {
            int c = component[edges.HalfEdge(e, 0) / 3];
            edgeCount[c]++;
            open[c] |= edges.Uses(e) != 2 || t[edges.HalfEdge(e, 0)] == t[edges.HalfEdge(e, 1)];
            unbalanced[c] |= open[c] && !IsBalanced(t, edges, e);
        }
        var seen = new bool[fanCount];
        for (int corner = 0; corner < fans.Length; corner++)
        {
            if (!seen[fans[corner]])
                vertexCount[component[corner / 3]]++;
            seen[fans[corner]] = true;
        }
        TriangleMesh[] pieces = count == 1 ? [mesh] : [.. members.Select(m => Piece(mesh, m))];
        Box3D[] bounds = [.. pieces.Select(p => p.Bounds)];
        double[] around = [.. Enumerable.Range(0, count).Select(c => unbalanced[c] ? 0 : Enclosing(c, pieces, bounds))];
        return
        [
            .. Enumerable
                .Range(0, count)
                .Select(c => new MeshComponent
                {
                    FirstTriangle = numbers[members[c][0]],
                    TriangleCount = members[c].Length,
                    IsClosed = !open[c],
                    IsBalanced = !unbalanced[c],
                    Genus = open[c] ? null : (2 - (vertexCount[c] - edgeCount[c] + members[c].Length)) / 2,
                    Volume = pieces[c].Volume,
                    Area = pieces[c].Area,
                    Bounds = bounds[c],
                    Enclosed = around[c],
                }),
        ];
    }

    /// <summary>Whether as many triangles run along an edge one way as the other, so that it bounds nothing.</summary>
    private static bool IsBalanced(ReadOnlySpan<int> triangles, MeshEdges edges, int edge)
    {
        int balance = 0,
            start = triangles[edges.HalfEdge(edge, 0)];
        for (int i = 0; i < edges.Uses(edge); i++)
            balance += triangles[edges.HalfEdge(edge, i)] == start ? 1 : -1;
        return balance == 0;
    }

    private static int[][] Members(int[] component, int count)
    {
        var sizes = new int[count];
        foreach (int c in component)
            sizes[c]++;
        int[][] members = [.. sizes.Select(s => new int[s])];
        Array.Clear(sizes);
        for (int t = 0; t < component.Length; t++)
            members[component[t]][sizes[component[t]]++] = t;
        return members;
    }

    private static TriangleMesh Piece(TriangleMesh mesh, int[] members)
    {
        var coordinates = new double[9 * members.Length];
        var triangles = new int[3 * members.Length];
        for (int i = 0; i < triangles.Length; i++)
        {
            mesh.Coordinates.Slice(3 * mesh.Triangles[3 * members[i / 3] + i % 3], 3).CopyTo(coordinates.AsSpan(3 * i));
            triangles[i] = i;
        }
        return TriangleMesh.Adopt(coordinates, triangles);
    }

    /// <summary>
    /// How often the other components go round a component's first corner: the sum of their solid angles over 4 pi; of
    /// one with a small gap nearly a whole number.
    /// </summary>
    private static double Enclosing(int inner, TriangleMesh[] pieces, Box3D[] bounds)
    {
        Vector3D point = pieces[inner].Vertex(0);
        double turns = 0;
        for (int c = 0; c < pieces.Length; c++)
            if (c != inner && Contains(bounds[c], point))
                turns += SolidAngle(pieces[c], point) / (4 * Math.PI);
        return turns;
    }

    private static bool Contains(Box3D box, Vector3D p) =>
        p.X >= box.Min.X
        && p.X <= box.Max.X
        && p.Y >= box.Min.Y
        && p.Y <= box.Max.Y
        && p.Z >= box.Min.Z
        && p.Z <= box.Max.Z;

    // Van Oosterom and Strackee, The Solid Angle of a Plane Triangle, 1983.
    private static double SolidAngle(TriangleMesh mesh, Vector3D from)
    {
        double sum = 0;
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            (Vector3D a, Vector3D b, Vector3D c) = mesh.Triangle(t);
            (a, b, c) = (a - from, b - from, c - from);
            double la = a.Length,
                lb = b.Length,
                lc = c.Length;
            double volume = Vector3D.Dot(a, Vector3D.Cross(b, c));
            sum +=
                2
                * Math.Atan2(
                    volume,
                    la * lb * lc + Vector3D.Dot(a, b) * lc + Vector3D.Dot(a, c) * lb + Vector3D.Dot(b, c) * la
                );
        }
        return sum;
    }
}
