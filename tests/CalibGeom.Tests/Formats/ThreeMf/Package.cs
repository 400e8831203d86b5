using System.IO.Compression;
using System.Text;
using CalibGeom.Formats;

namespace CalibGeom.Tests.Formats.ThreeMf;

/// <summary>
/// Hand-made 3MF packages, zipped by the framework's own archive class and so independent of the writer under test.
/// </summary>
internal static class Package
{
    internal const string Types = """
        <?xml version="1.0" encoding="UTF-8"?>
        <Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/></Types>
        """;

    internal const string Rels = """
        <?xml version="1.0" encoding="UTF-8"?>
        <Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Target="/3D/3dmodel.model" Id="rel0" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/></Relationships>
        """;

    // The box of the 3MF sample files: vertices and triangles as listed in CHECKS.md 10.3.
    internal const string Box = """
        <mesh><vertices><vertex x="0" y="0" z="0"/><vertex x="10" y="0" z="0"/><vertex x="10" y="20" z="0"/><vertex x="0" y="20" z="0"/><vertex x="0" y="0" z="30"/><vertex x="10" y="0" z="30"/><vertex x="10" y="20" z="30"/><vertex x="0" y="20" z="30"/></vertices><triangles><triangle v1="3" v2="2" v3="1"/><triangle v1="1" v2="0" v3="3"/><triangle v1="4" v2="5" v3="6"/><triangle v1="6" v2="7" v3="4"/><triangle v1="0" v2="1" v3="5"/><triangle v1="5" v2="4" v3="0"/><triangle v1="1" v2="2" v3="6"/><triangle v1="6" v2="5" v3="1"/><triangle v1="2" v2="3" v3="7"/><triangle v1="7" v2="6" v3="2"/><triangle v1="3" v2="0" v3="4"/><triangle v1="4" v2="7" v3="3"/></triangles></mesh>
        """;

    internal const string Model = $"""
        <?xml version="1.0" encoding="UTF-8"?>
        <model unit="millimeter" xml:lang="en-US" xmlns="http://schemas.microsoft.com/3dmanufacturing/core/2015/02"><metadata name="Title">Box</metadata><resources><object id="1" type="model" name="Box">{Box}</object></resources><build><item objectid="1"/></build></model>
        """;

    internal static Dictionary<string, string> Parts() =>
        new()
        {
            ["[Content_Types].xml"] = Types,
            ["_rels/.rels"] = Rels,
            ["3D/3dmodel.model"] = Model,
        };

    internal static byte[] Zip(
        IEnumerable<KeyValuePair<string, string>> parts,
        CompressionLevel level = CompressionLevel.Fastest
    )
    {
        using var stream = new MemoryStream();
        using (var zip = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true))
            foreach ((string name, string text) in parts)
            {
                using Stream part = zip.CreateEntry(name, level).Open();
                part.Write(Encoding.UTF8.GetBytes(text));
            }
        return stream.ToArray();
    }

    internal static byte[] WithModel(string model)
    {
        Dictionary<string, string> parts = Parts();
        parts["3D/3dmodel.model"] = model;
        return Zip(parts);
    }

    /// <summary>The sample box with one piece of its model replaced.</summary>
    internal static byte[] With(string old, string replacement)
    {
        Assert.Contains(old, Model, StringComparison.Ordinal);
        return WithModel(Model.Replace(old, replacement, StringComparison.Ordinal));
    }

    internal static MeshFile Read(byte[] bytes, bool lenient = false) =>
        MeshFile.Read(new MemoryStream(bytes), "test.3mf", lenient);
}
