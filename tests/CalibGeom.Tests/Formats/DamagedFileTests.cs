using System.Diagnostics;
using System.Text;
using CalibGeom.Formats;
using CalibGeom.Meshes;
using CalibGeom.Tests.Formats.ThreeMf;
using CalibGeom.Tests.Meshes;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace CalibGeom.Tests.Formats;

/// <summary>
/// Files with random bytes changed, inserted or cut: reading ends with a mesh or an <see cref="InputException"/>, within 10 s and within 4
/// times the inflated size plus 64 MB of allocation (all of the thread's allocations are counted, which bounds the peak).
/// </summary>
public class DamagedFileTests
{
    private static readonly (byte[] Bytes, long Inflated)[] Samples = [.. Whole()];

    private static IEnumerable<(byte[] Bytes, long Inflated)> Whole()
    {
        TriangleMesh torus = SampleMeshes.Torus(9, 2, 12, 8);
        yield return Same(StlWriterTests.Bytes(torus));
        yield return Same(Encoding.UTF8.GetBytes(CorpusCase.Load("Formats/corpus/stl.txt").ElementAt(1).Input));
        foreach (CorpusCase item in CorpusCase.Load("Formats/corpus/obj.txt").Where(c => c["error"] is null)) yield return Same(Encoding.UTF8.GetBytes(item.Input));
        var obj = new MemoryStream();
        ObjWriter.Write(obj, [new("torus", torus)]);
        yield return Same(obj.ToArray());
        var threeMf = new MemoryStream();
        ThreeMfWriter.Write(threeMf, [new("torus", torus)], new() { Title = "torus", SpecJson = "{}" });
        yield return (threeMf.ToArray(), 40_000);
        yield return (Package.Zip(Package.Parts(), System.IO.Compression.CompressionLevel.NoCompression), 4_000);
    }

    private static (byte[], long) Same(byte[] bytes) => (bytes, bytes.Length);

    private static Gen<(byte[] Bytes, long Inflated)> Damaged() =>
        from sample in Gen.Elements(Samples)
        from edits in (from kind in Gen.Choose(0, 3) from at in Gen.Choose(0, int.MaxValue - 1) from value in Gen.Choose(0, 255) select (kind, at, value)).NonEmptyListOf()
        select (edits.Take(8).Aggregate(sample.Bytes, (bytes, e) => Edit(bytes, e.kind, e.at, (byte)e.value)), sample.Inflated);

    private static byte[] Edit(byte[] bytes, int kind, int at, byte value)
    {
        if (bytes.Length == 0) return [value];
        at %= bytes.Length;
        if (kind == 0) return [.. bytes[..at], (byte)(bytes[at] ^ (1 << (value & 7))), .. bytes[(at + 1)..]];
        if (kind == 1) return [.. bytes[..at], value, .. bytes[at..]];
        if (kind == 2) return [.. bytes[..at], (byte)"0123456789.-eE /\"<> \n\r"[value % 22], .. bytes[(at + 1)..]];
        return bytes[..Math.Max(at, bytes.Length - 200)];
    }

    [Property(MaxTest = 600)]
    public Property NeverCrashHangOrSwallowMemory() => Prop.ForAll(Damaged().ToArbitrary(), file =>
    {
        foreach (bool lenient in new[] { false, true })
        {
            long before = GC.GetAllocatedBytesForCurrentThread();
            var clock = Stopwatch.StartNew();
            try
            {
                MeshFile read = MeshFile.Read(new MemoryStream(file.Bytes), "damaged", lenient);
                Assert.True(double.IsFinite(read.ToMesh().Area) || read.ToMesh().TriangleCount > 0);
            }
            catch (InputException e)
            {
                Assert.StartsWith("damaged", e.Message, StringComparison.Ordinal);
            }
            Assert.True(clock.Elapsed < TimeSpan.FromSeconds(10));
            Assert.True(GC.GetAllocatedBytesForCurrentThread() - before < 4 * file.Inflated + (64 << 20));
        }
    });

    [Fact]
    public void EveryTruncationOfABinaryStlOrA3mfIsAnError()
    {
        foreach ((byte[] bytes, _) in new[] { Samples[0], Samples[^1], Samples[^2] })
            for (int length = 0; length < bytes.Length; length += 7)
                Assert.Throws<InputException>(() => MeshFile.Read(new MemoryStream(bytes[..length]), "damaged"));
    }
}
