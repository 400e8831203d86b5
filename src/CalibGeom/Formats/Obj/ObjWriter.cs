using CalibGeom.Features.Files;

namespace CalibGeom.Formats.Obj;

/// <summary>
/// Writes Wavefront OBJ: one <c>o</c> object for each mesh, vertices in mm in the shortest decimals that read back to
/// the same value, triangles only, LF line ends. The same objects give the same bytes everywhere.
/// </summary>
public static class ObjWriter
{
    /// <summary>Writes named meshes.</summary>
    /// <param name="stream">Where to; left open.</param>
    /// <param name="objects">The meshes; line ends in a name become spaces.</param>
    /// <exception cref="IOException">Writing failed.</exception>
    public static void Write(Stream stream, IReadOnlyList<MeshObject> objects)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(objects);
        var output = new Utf8Output(stream);
        output.Append("# mm\n"u8);
        int written = 0;
        foreach (MeshObject item in objects)
        {
            output.Append("o "u8).Append(item.Name.ReplaceLineEndings(" ").Trim()).Append("\n"u8);
            Vertices(output, item.Mesh.Coordinates);
            Faces(output, item.Mesh.Triangles, written + 1);
            written += item.Mesh.VertexCount;
        }
        output.Flush();
    }

    private static void Vertices(Utf8Output output, ReadOnlySpan<double> c)
    {
        for (int i = 0; i < c.Length; i += 3)
            output
                .Append("v "u8)
                .Append(c[i])
                .Append(" "u8)
                .Append(c[i + 1])
                .Append(" "u8)
                .Append(c[i + 2])
                .Append("\n"u8);
    }

    private static void Faces(Utf8Output output, ReadOnlySpan<int> t, int first)
    {
        for (int i = 0; i < t.Length; i += 3)
            output
                .Append("f "u8)
                .Append(t[i] + first)
                .Append(" "u8)
                .Append(t[i + 1] + first)
                .Append(" "u8)
                .Append(t[i + 2] + first)
                .Append("\n"u8);
    }

    /// <summary>The same to a stream that is only ever written asynchronously.</summary>
    /// <param name="stream">Where to; stays open.</param>
    /// <param name="objects">As for <see cref="Write"/>.</param>
    /// <param name="cancellation">Stops the writing.</param>
    /// <exception cref="IOException">Writing failed.</exception>
    public static Task WriteAsync(
        Stream stream,
        IReadOnlyList<MeshObject> objects,
        CancellationToken cancellation = default
    ) => AsyncStreams.WriteAsync(stream, to => Write(to, objects), cancellation);
}
