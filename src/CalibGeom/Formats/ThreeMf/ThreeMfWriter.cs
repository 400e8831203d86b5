using System.Security;
using System.Text;
using CalibGeom.Features.Files;
using CalibGeom.Formats.ThreeMf.Zip;
using CalibGeom.Meshes;

namespace CalibGeom.Formats.ThreeMf;

/// <summary>
/// Writes 3MF (core specification 1.4): unit millimeter, one named object and one build item for each mesh, ids 1, 2,
/// ... in order, decimals in the shortest form that reads back to the same value. Nothing in the file depends on time
/// or machine: the same call gives the same parts in the same order; their compression is that of the .NET runtime. A
/// file with objects for calibrating a process ends in <c>.calibration.3mf</c>, the suffix that Core 1.4 reserves for
/// it.
/// </summary>
public static class ThreeMfWriter
{
    /// <summary>Writes named meshes.</summary>
    /// <param name="stream">Where to; written front to back, left open.</param>
    /// <param name="objects">The meshes; at least one, each with at least three vertices and one triangle.</param>
    /// <param name="content">Title, application and spec.</param>
    /// <exception cref="ArgumentException">No mesh, or one without triangles.</exception>
    /// <exception cref="InputException">The parts do not fit a plain zip (4 GB).</exception>
    /// <exception cref="IOException">Writing failed.</exception>
    public static void Write(Stream stream, IReadOnlyList<MeshObject> objects, ThreeMfContent content)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(objects);
        ArgumentNullException.ThrowIfNull(content);
        if (objects.Count == 0)
            throw new ArgumentException("A 3MF needs at least one object.", nameof(objects));
        foreach (MeshObject item in objects)
            if (item.Mesh.TriangleCount == 0 || item.Mesh.VertexCount < 3)
                throw new ArgumentException(
                    $"Object \"{item.Name}\" has no triangles; a 3MF mesh has at least one.",
                    nameof(objects)
                );
        var zip = new ZipWriter(stream);
        zip.Add(ThreeMfNames.ContentTypesPart, part => part.Write(Encoding.UTF8.GetBytes(ContentTypes(content))));
        zip.Add(ThreeMfNames.RootRelationships, part => part.Write(Encoding.UTF8.GetBytes(Relationships(content))));
        zip.Add(ThreeMfNames.ModelPart, part => Model(new Utf8Output(part), objects, content));
        if (content.Thumbnail is { } png)
            zip.Add(ThreeMfNames.ThumbnailPart, part => part.Write(png));
        zip.Finish();
    }

    private const string Declaration = "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n";

    private static string ContentTypes(ThreeMfContent content) =>
        Declaration
        + "<Types xmlns=\""
        + ThreeMfNames.ContentTypes
        + "\">\n"
        + "<Default Extension=\"rels\" ContentType=\""
        + ThreeMfNames.RelationshipsType
        + "\"/>\n"
        + "<Default Extension=\"model\" ContentType=\""
        + ThreeMfNames.ModelType
        + "\"/>\n"
        + (content.Thumbnail is null ? "" : "<Default Extension=\"png\" ContentType=\"image/png\"/>\n")
        + "</Types>\n";

    private static string Relationships(ThreeMfContent content) =>
        Declaration
        + "<Relationships xmlns=\""
        + ThreeMfNames.Relationships
        + "\">\n"
        + "<Relationship Id=\"rel0\" Type=\""
        + ThreeMfNames.ModelRelationship
        + "\" Target=\"/"
        + ThreeMfNames.ModelPart
        + "\"/>\n"
        + (
            content.Thumbnail is null
                ? ""
                : $"<Relationship Id=\"rel1\" Type=\"{ThreeMfNames.ThumbnailRelationship}\" "
                    + $"Target=\"/{ThreeMfNames.ThumbnailPart}\"/>\n"
        )
        + "</Relationships>\n";

    private static void Model(Utf8Output output, IReadOnlyList<MeshObject> objects, ThreeMfContent content)
    {
        output
            .Append(Declaration)
            .Append(
                $"<model unit=\"millimeter\" xml:lang=\"en-US\" xmlns=\"{ThreeMfNames.Core}\" "
                    + $"xmlns:cg=\"{ThreeMfNames.Own}\">\n"
            );
        Metadata(output, "Title", content.Title);
        Metadata(output, "Application", content.Application);
        Metadata(output, "cg:Spec", content.SpecJson ?? "");
        output.Append("<resources>\n"u8);
        for (int i = 0; i < objects.Count; i++)
            Object(output, i + 1, objects[i]);
        output.Append("</resources>\n<build>\n"u8);
        for (int i = 0; i < objects.Count; i++)
            Item(output, i + 1, objects[i].Transform);
        output.Append("</build>\n</model>\n"u8);
        output.Flush();
    }

    private static void Item(Utf8Output output, int id, Affine3D transform)
    {
        output.Append("<item objectid=\""u8).Append(id);
        if (transform != Affine3D.Identity)
        {
            output.Append("\" transform=\""u8);
            bool first = true;
            foreach (
                Vector3D v in (ReadOnlySpan<Vector3D>)[transform.X, transform.Y, transform.Z, transform.Translation]
            )
            foreach (double value in (ReadOnlySpan<double>)[v.X, v.Y, v.Z])
            {
                if (!first)
                    output.Append(" "u8);
                first = false;
                output.Append(value);
            }
        }
        output.Append("\"/>\n"u8);
    }

    private static void Metadata(Utf8Output output, string name, string text)
    {
        if (text.Length > 0)
            output.Append($"<metadata name=\"{name}\">{Escape(text)}</metadata>\n");
    }

    private static void Object(Utf8Output output, int id, MeshObject item)
    {
        output.Append("<object id=\""u8).Append(id).Append("\" type=\"model\""u8);
        string name = Escape(item.Name)
            .Replace("\n", "&#xA;", StringComparison.Ordinal)
            .Replace("\t", "&#x9;", StringComparison.Ordinal);
        if (name.Length > 0)
            output.Append($" name=\"{name}\"");
        output.Append("><mesh><vertices>\n"u8);
        ReadOnlySpan<double> c = item.Mesh.Coordinates;
        for (int i = 0; i < c.Length; i += 3)
            output
                .Append("<vertex x=\""u8)
                .Append(c[i])
                .Append("\" y=\""u8)
                .Append(c[i + 1])
                .Append("\" z=\""u8)
                .Append(c[i + 2])
                .Append("\"/>\n"u8);
        output.Append("</vertices><triangles>\n"u8);
        ReadOnlySpan<int> t = item.Mesh.Triangles;
        for (int i = 0; i < t.Length; i += 3)
            output
                .Append("<triangle v1=\""u8)
                .Append(t[i])
                .Append("\" v2=\""u8)
                .Append(t[i + 1])
                .Append("\" v3=\""u8)
                .Append(t[i + 2])
                .Append("\"/>\n"u8);
        output.Append("</triangles></mesh></object>\n"u8);
    }

    // Control characters other than tab and line ends have no place in XML 1.0 at all.
    private static string Escape(string text)
    {
        var clean = new StringBuilder(text.Length);
        foreach (Rune rune in text.EnumerateRunes())
            if (rune.Value is '\t' or '\n' or '\r' or (>= ' ' and not 0xFFFE and not 0xFFFF))
                clean.Append(rune);
        return SecurityElement.Escape(clean.ToString()).Replace("\r", "&#xD;", StringComparison.Ordinal);
    }

    /// <summary>The same to a stream that is only ever written asynchronously.</summary>
    /// <param name="stream">Where to; stays open.</param>
    /// <param name="objects">As for <see cref="Write"/>.</param>
    /// <param name="content">As for <see cref="Write"/>.</param>
    /// <param name="cancellation">Stops the writing.</param>
    /// <exception cref="IOException">Writing failed.</exception>
    public static Task WriteAsync(
        Stream stream,
        IReadOnlyList<MeshObject> objects,
        ThreeMfContent content,
        CancellationToken cancellation = default
    ) => AsyncStreams.WriteAsync(stream, to => Write(to, objects, content), cancellation);
}
