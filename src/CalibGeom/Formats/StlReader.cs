using CalibGeom.Meshes;

namespace CalibGeom.Formats;

/// <summary>
/// Reads STL into a mesh whose equal corners share an index: the same three 32-bit floats (-0 counts as 0) are one vertex, in order of first
/// appearance. Stored normals are not used; the order of corners says which side is out.
/// </summary>
public static class StlReader
{
    /// <summary>Reads a binary STL file.</summary>
    /// <param name="path">The file.</param>
    /// <exception cref="InputException">No such file; truncated, over-long, mis-counted, or a number that is not finite.</exception>
    public static TriangleMesh Read(string path)
    {
        using FileStream stream = InputFile.Open(path);
        return Read(stream, path);
    }

    /// <summary>Reads a binary STL.</summary>
    /// <param name="stream">A seekable stream at the start of the STL, which goes on to its end; left open.</param>
    /// <param name="name">What to call it in messages.</param>
    /// <exception cref="InputException">Truncated, over-long, mis-counted, or a number that is not finite.</exception>
    public static TriangleMesh Read(Stream stream, string name = "The STL") => ReadAll(StlTriangleStream.Open(stream, name), name);

    private static TriangleMesh ReadAll(StlTriangleStream source, string name)
    {
        if (source.TriangleCount > Array.MaxLength / 3)
            throw new InputException($"{name} has {source.TriangleCount} facets; at most {Array.MaxLength / 3} fit in one mesh. Split it.");
        var triangles = new int[3 * source.TriangleCount];
        var welder = new VertexWelder((int)(source.TriangleCount / 2) + 16);
        int at = 0;
        for (ReadOnlySpan<StlFacet> block = source.Next(); block.Length > 0; block = source.Next())
            foreach (ref readonly StlFacet facet in block)
            {
                triangles[at++] = welder.Add(facet.AX, facet.AY, facet.AZ);
                triangles[at++] = welder.Add(facet.BX, facet.BY, facet.BZ);
                triangles[at++] = welder.Add(facet.CX, facet.CY, facet.CZ);
            }
        return TriangleMesh.Adopt(welder.TakeCoordinates(), triangles);
    }
}
