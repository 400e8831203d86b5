using System.Runtime.InteropServices;
using CalibGeom.Formats.Stl;
using CalibGeom.Inspection.Layers;
using CalibGeom.Inspection.Topology;
using CalibGeom.Meshes;
using CalibGeom.Slicing;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Benchmarks;

/// <summary>The works of the table of docs/performance.md and what each is held against.</summary>
internal static class PerformanceWorks
{
    private const string Bytes = "reading and summing the bytes of 1 M";

    private static readonly string Place = Path.Combine(
        Path.GetTempPath(),
        $"calibgeom-table-{Environment.ProcessId}.stl"
    );

    private static readonly Lazy<TriangleMesh> Torus = new(() => MillionTriangles.Torus());

    internal static IEnumerable<PerformanceWork> All =>
        [
            new(
                "plate, three cups, ten leaning columns",
                "Manifold 3.5.4 (WebAssembly), same shape",
                40,
                () => (() => PerformanceShapes.Plate().ToMesh(), null)
            ),
            new("`standard`, spec to STL bytes", "its solid to a mesh alone", 25, Standard),
            new("1,000 columns", Bytes, 5, () => (() => PerformanceShapes.Columns(1_000).ToMesh(), Sum)),
            new("write 1 M triangles", "plain loop without normals", 15, Write),
            new("read and weld 1 M", Bytes, 9, () => (() => StlReader.Read(File), Sum)),
            new("topology with crossings, 1 M", Bytes, 3, () => (() => MeshTopology.Run(Torus.Value), Sum)),
            new("1,000 layers, slices", Bytes, 3, () => (() => Slices(Torus.Value), Sum)),
            new("1,000 layers, all checks", Bytes, 1, () => (() => Layers(Torus.Value), Sum)),
            new("layers of a block as two boxes that overlap", "layers of the block", 3, Overlap),
        ];

    /// <summary>The torus as a file; deleted by <see cref="Delete"/>.</summary>
    private static string File
    {
        get
        {
            if (System.IO.File.Exists(Place))
                return Place;
            using FileStream file = System.IO.File.Create(Place);
            StlWriter.Write(file, Torus.Value, "table");
            return Place;
        }
    }

    internal static void Delete() => System.IO.File.Delete(Place);

    private static (Action, Action?) Standard()
    {
        TestObject made = TestObject.Of(Presets.Standard);
        return (ToBytes, () => made.Solid!.ToMesh());

        static void ToBytes()
        {
            using var stream = new MemoryStream();
            StlWriter.Write(stream, TestObject.Of(Presets.Standard).ToMesh(), "table");
        }
    }

    private static (Action, Action?) Write()
    {
        TriangleMesh torus = Torus.Value;
        float[] corners = [.. torus.Coordinates.ToArray().Select(c => (float)c)];
        int[] triangles = torus.Triangles.ToArray();
        var stream = new MemoryStream(64 << 20);
        return (
            () =>
            {
                stream.Position = 0;
                StlWriter.Write(stream, torus, "table");
            },
            () => PlainWrite(stream, corners, triangles)
        );
    }

    private static (Action, Action?) Overlap()
    {
        TriangleMesh one = PerformanceShapes.Block(0, 40),
            two = TriangleMesh.Join([PerformanceShapes.Block(0, 20.5), PerformanceShapes.Block(19.5, 40)]);
        return (() => LayerInspection.Run(two), () => LayerInspection.Run(one));
    }

    private static void Slices(TriangleMesh mesh) => _ = new LayerSlicer(mesh, 0.04).Slice().Sum(l => l.Area);

    private static void Layers(TriangleMesh mesh) =>
        LayerInspection.Run(mesh, new LayerSettings { LayerHeight = 0.04 });

    private static void PlainWrite(MemoryStream stream, float[] corners, int[] triangles)
    {
        stream.Position = 84;
        var buffer = new byte[50 * 1300];
        int at = 0;
        for (int i = 0; i < triangles.Length; i += 3, at += 50)
        {
            if (at == buffer.Length)
            {
                stream.Write(buffer, 0, at);
                at = 0;
            }
            for (int k = 0; k < 3; k++)
                MemoryMarshal.AsBytes(corners.AsSpan(3 * triangles[i + k], 3)).CopyTo(buffer.AsSpan(at + 12 + 12 * k));
        }
        stream.Write(buffer, 0, at);
    }

    private static void Sum()
    {
        long sum = 0;
        foreach (byte b in System.IO.File.ReadAllBytes(File))
            sum += b;
        GC.KeepAlive(sum);
    }
}
