namespace CalibGeom.Meshes;

public sealed partial class TriangleMesh
{
    /// <summary>The section at a height, in the coordinates x and y of the mesh.</summary>
    /// <param name="z">mm, finite.</param>
    /// <exception cref="ArgumentException">The height is not finite.</exception>
    public CrossSection CrossSection(double z) => CrossSection(new Vector3D(0, 0, z), new Vector3D(0, 0, 1));

    /// <summary>
    /// The section with any plane. A vertex on the plane counts as lying above it, so that every contour of a closed
    /// mesh is closed and a face in the plane belongs to the material below it.
    /// </summary>
    /// <param name="point">Any point of the plane, mm; the origin of the section's frame.</param>
    /// <param name="normal">Square to the plane, pointing to where the section is seen from.</param>
    /// <exception cref="ArgumentException">A value is not finite, or the normal has no length.</exception>
    public CrossSection CrossSection(Vector3D point, Vector3D normal)
    {
        if (!double.IsFinite(point.X + point.Y + point.Z))
            throw new ArgumentException($"A plane's point must be finite; it is {point}.", nameof(point));
        var frame = new SectionFrame(point, normal);
        var heights = new double[VertexCount];
        for (int v = 0; v < heights.Length; v++)
            heights[v] = Vector3D.Dot(frame.Normal, Vertex(v) - point);
        var edges = new SectionEdges(this);
        var linker = new SectionLinker(edges.Count);
        for (int t = 0; t < triangles.Length; t += 3)
            linker.AddTriangle(
                edges.OfTriangle.AsSpan(t, 3),
                heights[triangles[t]] >= 0,
                heights[triangles[t + 1]] >= 0,
                heights[triangles[t + 2]] >= 0
            );
        linker.Link();
        return new CrossSection(frame, Contours(frame, heights, edges, linker));
    }

    private SectionContour[] Contours(SectionFrame frame, double[] heights, SectionEdges edges, SectionLinker linker)
    {
        var contours = new List<SectionContour>();
        var points = new List<Vector3D>();
        for (int chain = 0, node = 0; chain < linker.Ends.Count; chain++)
        {
            points.Clear();
            for (; node < linker.Ends[chain]; node++)
            {
                Vector3D p = Crossing(edges.Ends(linker.Nodes[node]), heights);
                if (points.Count == 0 || points[^1] != p)
                    points.Add(p);
            }
            if (points.Count > 1 && points[0] == points[^1])
                points.RemoveAt(points.Count - 1);
            if (points.Count < 3)
                continue;
            Vector3D[] ring = points.ToArray();
            contours.Add(new SectionContour(ring, Array.ConvertAll(ring, frame.ToPlane), linker.Closed[chain]));
        }
        return contours.ToArray();
    }

    private Vector3D Crossing((int Low, int High) edge, double[] heights)
    {
        double a = heights[edge.Low],
            b = heights[edge.High];
        if (a == 0)
            return Vertex(edge.Low);
        if (b == 0)
            return Vertex(edge.High);
        return Vertex(edge.Low) + (Vertex(edge.High) - Vertex(edge.Low)) * (a / (a - b));
    }
}
