using System.Diagnostics;
using System.Globalization;
using System.IO.Compression;
using System.Text;
using CalibGeom.Formats;
using CalibGeom.Formats.Obj;
using CalibGeom.Formats.ThreeMf;
using CalibGeom.Meshes;
using CalibGeom.Tests.Formats.ThreeMf;
using CalibGeom.Tests.Meshes;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace CalibGeom.Tests.Formats;

/// <summary>
/// Files with random bytes changed, inserted or cut: reading ends with a mesh or an <see cref="InputException"/>,
/// within 10 s and within 4 times the inflated size plus 64 MB of allocation (all of the thread's allocations are
/// counted, which bounds the peak).
/// </summary>
public class DamagedFileTests
{
    // Of small files the 64 MB are all that counts. Of large ones most of the bound should be their size.
    private const int FixedForLarge = 4 << 20;

    private static readonly (byte[] Bytes, long Inflated)[] Samples = [.. Whole()];

    private static IEnumerable<(byte[] Bytes, long Inflated)> Whole()
    {
        TriangleMesh torus = SampleMeshes.Torus(9, 2, 12, 8);
        yield return Same(StlWriterTests.Bytes(torus));
        yield return Same(Encoding.UTF8.GetBytes(CorpusCase.Load("Formats/corpus/stl.txt").ElementAt(1).Input));
        foreach (CorpusCase item in CorpusCase.Load("Formats/corpus/obj.txt").Where(c => c["error"] is null))
            yield return Same(Encoding.UTF8.GetBytes(item.Input));
        var obj = new MemoryStream();
        ObjWriter.Write(obj, [new("torus", torus)]);
        yield return Same(obj.ToArray());
        var threeMf = new MemoryStream();
        ThreeMfWriter.Write(threeMf, [new("torus", torus)], new() { Title = "torus", SpecJson = "{}" });
        yield return (threeMf.ToArray(), 40_000);
        yield return (Package.Zip(Package.Parts(), CompressionLevel.NoCompression), 4_000);
    }

    /// <summary>Each format with 3 to 8 MB: a closed body, and triangles that share no corner.</summary>
    private static IEnumerable<(byte[] Bytes, long Inflated)> Several()
    {
        TriangleMesh torus = SampleMeshes.Torus(90, 20, 240, 160),
            apart = Torn(SampleMeshes.Torus(90, 20, 120, 120));
        yield return Same(StlWriterTests.Bytes(torus));
        yield return Same(StlWriterTests.Bytes(Torn(torus)));
        yield return Same(Ascii(apart));
        foreach (TriangleMesh mesh in new[] { torus, apart })
        {
            var obj = new MemoryStream();
            ObjWriter.Write(obj, [new("large", mesh)]);
            yield return Same(obj.ToArray());
            var threeMf = new MemoryStream();
            ThreeMfWriter.Write(threeMf, [new("large", mesh)], new() { Title = "large" });
            threeMf.Position = 0;
            using var zip = new ZipArchive(threeMf);
            yield return (threeMf.ToArray(), zip.Entries.Sum(e => e.Length));
        }
    }

    private static TriangleMesh Torn(TriangleMesh mesh) =>
        new(
            [
                .. Enumerable
                    .Range(0, mesh.TriangleCount)
                    .SelectMany(t =>
                        new[] { mesh.Triangle(t).A, mesh.Triangle(t).B, mesh.Triangle(t).C }.SelectMany(p =>
                            new[] { p.X, p.Y, p.Z + t }
                        )
                    ),
            ],
            [.. Enumerable.Range(0, 3 * mesh.TriangleCount)]
        );

    private static byte[] Ascii(TriangleMesh mesh)
    {
        var text = new StringBuilder("solid large\n");
        for (int t = 0; t < mesh.TriangleCount; t++)
        {
            (Vector3D a, Vector3D b, Vector3D c) = mesh.Triangle(t);
            text.Append("facet normal 0 0 1\nouter loop\n");
            foreach (Vector3D p in new[] { a, b, c })
                text.Append(CultureInfo.InvariantCulture, $"vertex {p.X:R} {p.Y:R} {p.Z:R}\n");
            text.Append("endloop\nendfacet\n");
        }
        return Encoding.UTF8.GetBytes(text.Append("endsolid large\n").ToString());
    }

    private static (byte[], long) Same(byte[] bytes) => (bytes, bytes.Length);

    private static Gen<(byte[] Bytes, long Inflated)> Damaged() =>
        from sample in Gen.Elements(Samples)
        from edits in (
            from kind in Gen.Choose(0, 3)
            from at in Gen.Choose(0, int.MaxValue - 1)
            from value in Gen.Choose(0, 255)
            select (kind, at, value)
        ).NonEmptyListOf()
        select (
            edits.Take(8).Aggregate(sample.Bytes, (bytes, e) => Edit(bytes, e.kind, e.at, (byte)e.value)),
            sample.Inflated
        );

    private static byte[] Edit(byte[] bytes, int kind, int at, byte value)
    {
        if (bytes.Length == 0)
            return [value];
        at %= bytes.Length;
        if (kind == 0)
            return [.. bytes[..at], (byte)(bytes[at] ^ (1 << (value & 7))), .. bytes[(at + 1)..]];
        if (kind == 1)
            return [.. bytes[..at], value, .. bytes[at..]];
        if (kind == 2)
            return [.. bytes[..at], (byte)"0123456789.-eE /\"<> \n\r"[value % 22], .. bytes[(at + 1)..]];
        return bytes[..Math.Max(at, bytes.Length - 200)];
    }

    [Property(MaxTest = 600)]
    public Property NeverCrashHangOrSwallowMemory() =>
        Prop.ForAll(Damaged().ToArbitrary(), file => Survives(file.Bytes, 4 * file.Inflated + (64 << 20)));

    /// <summary>
    /// Each large file whole and three times damaged, with fixed seeds: a property would print megabytes.
    /// </summary>
    [Fact]
    public void LargeFilesNeitherTakeMoreThanFourTimesTheirSize()
    {
        foreach ((byte[] whole, long inflated) in Several())
        {
            Survives(whole, 4 * inflated + FixedForLarge);
            for (int seed = 0; seed < 3; seed++)
            {
                var random = new Random(seed);
                byte[] bytes = whole;
                for (int edits = seed; edits >= 0; edits--)
                    bytes = Edit(
                        bytes,
                        edits == 0 && seed > 0 ? 3 : random.Next(3),
                        random.Next(),
                        (byte)random.Next(256)
                    );
                Survives(bytes, 4 * inflated + FixedForLarge);
            }
        }
    }

    private static void Survives(byte[] bytes, long most)
    {
        foreach (bool lenient in new[] { false, true })
        {
            long before = GC.GetAllocatedBytesForCurrentThread();
            var clock = Stopwatch.StartNew();
            long allocated = long.MaxValue;
            try
            {
                MeshFile read = MeshFile.Read(new MemoryStream(bytes), "damaged", lenient);
                allocated = GC.GetAllocatedBytesForCurrentThread() - before;
                Assert.True(double.IsFinite(read.ToMesh().Area) || read.ToMesh().TriangleCount > 0);
            }
            catch (InputException e)
            {
                allocated = GC.GetAllocatedBytesForCurrentThread() - before;
                Assert.StartsWith("damaged", e.Message, StringComparison.Ordinal);
            }
            Assert.True(clock.Elapsed < TimeSpan.FromSeconds(10));
            Assert.InRange(allocated, 0, most);
        }
    }

    [Fact]
    public void EveryTruncationOfABinaryStlOrA3mfIsAnError()
    {
        foreach ((byte[] bytes, _) in new[] { Samples[0], Samples[^1], Samples[^2] })
            for (int length = 0; length < bytes.Length; length += 7)
                Assert.Throws<InputException>(() => MeshFile.Read(new MemoryStream(bytes[..length]), "damaged"));
    }
}
