using System.Buffers;
using System.Buffers.Binary;
using CalibGeom.Features.Files;
using CalibGeom.Meshes;

namespace CalibGeom.Formats.Stl;

/// <summary>
/// Writes binary STL: an 80-byte header, the count, and 50 bytes a triangle in the mesh's order. Coordinates are
/// rounded to 32-bit floats; those on the grid (see <see cref="Planar.Grid"/>) are written exactly. The normal is the
/// unit normal of the written corners, and 0, 0, 1 for a facet without area, never NaN. The same mesh and header give
/// the same bytes everywhere.
/// </summary>
public static class StlWriter
{
    /// <summary>The length of the header in bytes: 80.</summary>
    public const int HeaderLength = 80;

    private const int FacetsInBlock = 320;

    /// <summary>Writes a mesh.</summary>
    /// <param name="stream">Where to; written front to back, never sought in, left open.</param>
    /// <param name="mesh">The mesh.</param>
    /// <param name="header">Text for the 80-byte header, padded with spaces. What is not printable ASCII becomes '?',
    /// what goes beyond 80 bytes is cut, and a text that begins with "solid" in any case is preceded by "mesh ", since
    /// readers take that word for ASCII STL.</param>
    /// <exception cref="ArgumentException">A coordinate is too large for a 32-bit float (beyond 3.4e38 mm).</exception>
    /// <exception cref="IOException">Writing failed.</exception>
    public static void Write(Stream stream, TriangleMesh mesh, string header)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(mesh);
        WritePreamble(stream, (uint)mesh.TriangleCount, header);
        ReadOnlySpan<int> triangles = mesh.Triangles;
        float[] corners = ArrayPool<float>.Shared.Rent(mesh.Coordinates.Length + StlBlock.Beyond);
        byte[] block = ArrayPool<byte>.Shared.Rent(FacetsInBlock * StlFacet.Size + StlBlock.Beyond);
        StlBlock.ToSingles(mesh.Coordinates, corners);
        while (triangles.Length > 0)
        {
            int count = Math.Min(FacetsInBlock, triangles.Length / 3);
            StlBlock.Fill(block, corners, triangles[..(3 * count)]);
            stream.Write(block, 0, count * StlFacet.Size);
            triangles = triangles[(3 * count)..];
        }
        ArrayPool<byte>.Shared.Return(block);
        ArrayPool<float>.Shared.Return(corners);
    }

    /// <summary>Writes the 84 bytes that stand before the facets, for a caller that streams facets itself.</summary>
    /// <param name="stream">Where to.</param>
    /// <param name="triangles">The number of facets that follow.</param>
    /// <param name="header">Text for the header, treated as in <see cref="Write"/>.</param>
    /// <exception cref="IOException">Writing failed.</exception>
    public static void WritePreamble(Stream stream, uint triangles, string header)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(header);
        Span<byte> preamble = stackalloc byte[HeaderLength + sizeof(uint)];
        preamble.Fill((byte)' ');
        if (header.TrimStart().StartsWith("solid", StringComparison.OrdinalIgnoreCase))
            header = "mesh " + header;
        for (int i = 0; i < Math.Min(header.Length, HeaderLength); i++)
            preamble[i] = header[i] is >= ' ' and <= '~' ? (byte)header[i] : (byte)'?';
        BinaryPrimitives.WriteUInt32LittleEndian(preamble[HeaderLength..], triangles);
        stream.Write(preamble);
    }

    /// <summary>The same to a stream that is only ever written asynchronously.</summary>
    /// <param name="stream">Where to; stays open.</param>
    /// <param name="mesh">The mesh.</param>
    /// <param name="header">As for <see cref="Write"/>.</param>
    /// <param name="cancellation">Stops the writing.</param>
    /// <exception cref="IOException">Writing failed.</exception>
    public static Task WriteAsync(
        Stream stream,
        TriangleMesh mesh,
        string header,
        CancellationToken cancellation = default
    ) => AsyncStreams.WriteAsync(stream, to => Write(to, mesh, header), cancellation);
}
