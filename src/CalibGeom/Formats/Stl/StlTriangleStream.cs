using System.Buffers.Binary;
using System.Runtime.InteropServices;

namespace CalibGeom.Formats.Stl;

/// <summary>
/// Reads a binary STL block by block in constant memory, however long it is. The declared count must agree with the
/// file's length before the first block is handed out. Not safe to share between threads.
/// </summary>
public sealed class StlTriangleStream : IDisposable
{
    internal const int PreambleLength = StlWriter.HeaderLength + sizeof(uint);
    private const int FacetsInBlock = 2600;

    private readonly Stream stream;
    private readonly string name;
    private readonly byte[] buffer = new byte[FacetsInBlock * StlFacet.Size];
    private readonly byte[] header;
    private readonly bool lenient;
    private long done;

    private StlTriangleStream(Stream stream, string name, byte[] header, long triangles, bool lenient)
    {
        (this.stream, this.name, this.header, this.lenient) = (stream, name, header, lenient);
        TriangleCount = triangles;
    }

    /// <summary>The number of facets in the file.</summary>
    public long TriangleCount { get; }

    /// <summary>The 80-byte header as it stands.</summary>
    public ReadOnlySpan<byte> Header => header;

    /// <summary>Opens a file.</summary>
    /// <param name="path">A binary STL.</param>
    /// <exception cref="InputException">There is no such file, or its length is not 84 + 50 times the count it
    /// declares.</exception>
    public static StlTriangleStream Open(string path)
    {
        Stream stream = InputFile.Open(path);
        try
        {
            return Open(stream, path);
        }
        catch
        {
            stream.Dispose();
            throw;
        }
    }

    /// <summary>Opens a stream.</summary>
    /// <param name="stream">A seekable stream at the start of a binary STL that goes on to its end; disposed with the
    /// result.</param>
    /// <param name="name">What to call it in messages.</param>
    /// <exception cref="ArgumentException">The stream cannot seek.</exception>
    /// <exception cref="InputException">The length is not 84 + 50 times the declared count.</exception>
    public static StlTriangleStream Open(Stream stream, string name)
    {
        ArgumentNullException.ThrowIfNull(stream);
        if (!stream.CanSeek)
            throw new ArgumentException("Block-wise reading needs a stream that can seek.", nameof(stream));
        long length = stream.Length - stream.Position;
        var preamble = new byte[PreambleLength];
        int got = stream.ReadAtLeast(preamble, preamble.Length, throwOnEndOfStream: false);
        long declared =
            got < PreambleLength ? 0 : BinaryPrimitives.ReadUInt32LittleEndian(preamble.AsSpan(StlWriter.HeaderLength));
        StlLength.Require(name, length, declared);
        return new(stream, name, preamble[..StlWriter.HeaderLength], declared, lenient: false);
    }

    /// <summary>
    /// Facets that follow the preamble, which the caller has read; a lenient stream hands out facets that are not
    /// finite.
    /// </summary>
    internal static StlTriangleStream Continue(
        Stream stream,
        string name,
        byte[] header,
        long triangles,
        bool lenient
    ) => new(stream, name, header, triangles, lenient);

    /// <summary>The next facets, at most 2600; empty at the end. The span is good until the next call.</summary>
    /// <exception cref="InputException">A corner or a normal is not a finite number (the message gives the byte), or
    /// the file became shorter while it was read.</exception>
    public ReadOnlySpan<StlFacet> Next()
    {
        int count = (int)Math.Min(FacetsInBlock, TriangleCount - done);
        if (count == 0)
            return default;
        Span<byte> bytes = buffer.AsSpan(0, count * StlFacet.Size);
        int got = stream.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
        if (got < bytes.Length)
            throw new InputException(
                InputIds.Mesh,
                $"{name} ended at byte {PreambleLength + done * StlFacet.Size + got} while it was read. Try "
                    + $"again when nothing writes to it."
            );
        ReadOnlySpan<StlFacet> facets = MemoryMarshal.Cast<byte, StlFacet>(bytes);
        if (!lenient)
            RequireFinite(facets);
        done += count;
        return facets;
    }

    /// <summary>Closes the underlying stream.</summary>
    public void Dispose() => stream.Dispose();

    private void RequireFinite(ReadOnlySpan<StlFacet> facets)
    {
        for (int i = 0; i < facets.Length; i++)
            if (!AllFinite(in facets[i]))
                throw NotFinite(i);
    }

    // Bits, not floating point: an exponent of all ones is infinity or NaN.
    private static bool AllFinite(ref readonly StlFacet facet)
    {
        ReadOnlySpan<byte> bytes = MemoryMarshal.AsBytes(new ReadOnlySpan<StlFacet>(in facet));
        ulong bad = 0;
        for (int i = 0; i < 48; i += 8)
        {
            ulong pair = MemoryMarshal.Read<ulong>(bytes[i..]) & 0x7F8000007F800000;
            bad |= pair + 0x0080000000800000;
        }
        return (bad & 0x8000000080000000) == 0;
    }

    private InputException NotFinite(int index)
    {
        ReadOnlySpan<float> values = MemoryMarshal.Cast<byte, float>(buffer.AsSpan(index * StlFacet.Size, 48));
        int at = 0;
        while (float.IsFinite(values[at]))
            at++;
        long facet = done + index;
        string what = at < 3 ? "normal" : "corner";
        return new(
            $"{name}: facet {facet} has a {what} that is not a finite number, at byte "
                + $"{PreambleLength + facet * StlFacet.Size + at * 4L}. "
                + "Export the mesh again, or read it leniently."
        );
    }
}
