using System.Buffers.Binary;
using System.IO.Compression;
using CalibGeom.Features.Files;
using CalibGeom.Formats;
using CalibGeom.Meshes;
using CalibGeom.Objects;
using CalibGeom.TestObjects.Specs;
using CalibGeom.Verification.Calipers;
using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Fuzz;

/// <summary>Every reader of files that other people may have made.</summary>
internal static class FuzzedReaders
{
    internal static IReadOnlyList<FuzzedReader> All { get; } =
    [
        new("ASCII STL", ["box.ascii.stl"], b => Mesh(b, lenient: false)),
        new("ASCII STL, lenient", ["box.ascii.stl"], b => Mesh(b, lenient: true)),
        new("binary STL", ["box.ascii.stl"], b => Mesh(b, lenient: false)) { Opened = Binary },
        new("binary STL, lenient", ["box.ascii.stl"], b => Mesh(b, lenient: true)) { Opened = Binary },
        new("OBJ", ["box.obj"], b => Mesh(b, lenient: false)),
        new("OBJ, lenient", ["box.obj"], b => Mesh(b, lenient: true)),
        new("3MF, model", ["box.model.xml"], b => Mesh(b, lenient: false)) { Packed = Package },
        new("3MF, model, lenient", ["box.model.xml"], b => Mesh(b, lenient: true)) { Packed = Package },
        new("3MF, package", ["box.model.xml"], b => Mesh(b, lenient: false)) { Opened = Package },
        new("spec", ["witness.spec.json"], b => SpecJson.Read(new MemoryStream(b))),
        new("object file", ["witness.object.json"], b => ObjectFileJson.Read(new MemoryStream(b), "object")),
        new("feature table", ["witness.features.csv"], b => FeatureTableCsv.Read(new MemoryStream(b))),
        new(
            "readings",
            ["bench.readings.csv", "bench.readings.json"],
            b => ReadingsFile.Read(new MemoryStream(b), "readings")
        ),
        new("log", ["demo.log.jsonl", "plate.log.jsonl"], b => TrialLog.Read(new MemoryStream(b))),
        new(
            "caliper record",
            ["cal.caliper.csv"],
            b => CaliperRecordFile.Parse(InputBytes.Utf8(b, "A caliper record"))
        ),
    ];

    private static void Mesh(byte[] bytes, bool lenient)
    {
        TriangleMesh mesh = MeshFile.Read(new MemoryStream(bytes), "mesh", lenient).ToMesh();
        foreach (double coordinate in mesh.Coordinates)
            Assert.True(double.IsFinite(coordinate));
    }

    private static byte[] Binary(byte[] ascii)
    {
        TriangleMesh mesh = MeshFile.Read(new MemoryStream(ascii), "box").ToMesh();
        var bytes = new byte[84 + 50 * mesh.TriangleCount];
        BinaryPrimitives.WriteInt32LittleEndian(bytes.AsSpan(80), mesh.TriangleCount);
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            (Vector3D a, Vector3D b, Vector3D c) = mesh.Triangle(t);
            int at = 84 + 50 * t + 12;
            foreach (double x in new[] { a.X, a.Y, a.Z, b.X, b.Y, b.Z, c.X, c.Y, c.Z })
            {
                BinaryPrimitives.WriteSingleLittleEndian(bytes.AsSpan(at), (float)x);
                at += 4;
            }
        }
        return bytes;
    }

    /// <summary>Not packed closely, so that the size of the file is that of what stands in it.</summary>
    private static byte[] Package(byte[] model)
    {
        using var stream = new MemoryStream();
        using (var zip = new ZipArchive(stream, ZipArchiveMode.Create, leaveOpen: true))
        {
            Add(
                "[Content_Types].xml",
                """
                <?xml version="1.0"?><Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/></Types>
                """u8
            );
            Add(
                "_rels/.rels",
                """
                <?xml version="1.0"?><Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Target="/3D/3dmodel.model" Id="r" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/></Relationships>
                """u8
            );
            Add("3D/3dmodel.model", model);

            void Add(string name, ReadOnlySpan<byte> content)
            {
                using Stream part = zip.CreateEntry(name, CompressionLevel.NoCompression).Open();
                part.Write(content);
            }
        }
        return stream.ToArray();
    }
}
