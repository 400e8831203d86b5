using System.Buffers.Binary;
using CalibGeom.Meshes;

namespace CalibGeom.Formats.Stl;

/// <summary>
/// Reads STL into a mesh whose equal corners share an index: the same three 32-bit floats (-0 counts as 0) are one
/// vertex, in order of first appearance. Stored normals are not used; the order of corners says which side is out.
/// <see cref="MeshFile"/> reads every format.
/// </summary>
public static class StlReader
{
    /// <summary>Reads a binary STL file.</summary>
    /// <param name="path">The file.</param>
    /// <exception cref="InputException">No such file; truncated, over-long, mis-counted, or a number that is not
    /// finite.</exception>
    public static TriangleMesh Read(string path)
    {
        using FileStream stream = InputFile.Open(path);
        return Read(stream, path);
    }

    /// <summary>Reads a binary STL.</summary>
    /// <param name="stream">A seekable stream at the start of the STL, which goes on to its end; left open.</param>
    /// <param name="name">What to call it in messages.</param>
    /// <exception cref="InputException">Truncated, over-long, mis-counted, or a number that is not finite.</exception>
    public static TriangleMesh Read(Stream stream, string name = "The STL")
    {
        ArgumentNullException.ThrowIfNull(stream);
        return ReadBinary(stream, new Faults(name, lenient: false)).Mesh;
    }

    internal static MeshObject ReadBinary(Stream stream, Faults faults)
    {
        long length = stream.Length - stream.Position;
        var preamble = new byte[StlTriangleStream.PreambleLength];
        int got = stream.ReadAtLeast(preamble, preamble.Length, throwOnEndOfStream: false);
        long declared =
            got < preamble.Length
                ? 0
                : BinaryPrimitives.ReadUInt32LittleEndian(preamble.AsSpan(StlWriter.HeaderLength));
        if (!faults.Lenient || length < preamble.Length)
            StlLength.Require(faults.Name, length, declared);
        long whole = Whole(length, declared, faults);
        if (whole > Array.MaxLength / 3)
            throw faults.Fatal($"has {whole} facets; at most {Array.MaxLength / 3} fit in one mesh", "Split it.");
        var source = StlTriangleStream.Continue(
            stream,
            faults.Name,
            preamble[..StlWriter.HeaderLength],
            whole,
            faults.Lenient
        );
        return new("", Gather(source, faults));
    }

    private static TriangleMesh Gather(StlTriangleStream source, Faults faults)
    {
        var mesh = new FacetMesh((int)source.TriangleCount);
        long done = 0;
        for (
            ReadOnlySpan<StlFacet> block = source.Next();
            block.Length > 0;
            done += block.Length, block = source.Next()
        )
        {
            if (faults.Lenient)
                AddFinite(block, mesh, done, faults);
            else
                mesh.Add(block);
        }
        return mesh.ToMesh();
    }

    private static void AddFinite(ReadOnlySpan<StlFacet> block, FacetMesh mesh, long done, Faults faults)
    {
        for (int i = 0; i < block.Length; i++)
        {
            if (!block[i].HasFiniteNormal)
                faults.Drop(Place(done + i), "normals that are not finite numbers");
            if (block[i].HasFiniteCorners)
                mesh.Add(block.Slice(i, 1));
            else
                faults.Drop(Place(done + i), "facets with corners that are not finite numbers");
        }
    }

    private static string Place(long facet) =>
        $"facet {facet} at byte {StlTriangleStream.PreambleLength + facet * StlFacet.Size}";

    // A file that holds a whole number of facets but declares another is taken at its length: the count is what writers
    // forget to update.
    private static long Whole(long length, long declared, Faults faults)
    {
        long rest = length - StlTriangleStream.PreambleLength,
            held = rest / StlFacet.Size;
        if (StlLength.Agrees(length, declared))
            return declared;
        if (rest % StlFacet.Size == 0)
        {
            faults.Drop($"byte 80 declares {declared} facets, the file holds {held}", "wrong facet counts");
            return held;
        }
        long whole = Math.Min(held, declared);
        long end = StlTriangleStream.PreambleLength + whole * StlFacet.Size;
        faults.Drop(
            $"byte {end} of {length}; {declared} facets declared, {whole} read",
            "file ends that hold no whole facet"
        );
        return whole;
    }
}
