using System.Buffers.Binary;
using CalibGeom.Formats;
using CalibGeom.Meshes;
using CalibGeom.Plates;
using static CalibGeom.Tests.Plates.Shapes;

namespace CalibGeom.Tests.Plates;

public class PlateMergeTests
{
    [Fact]
    public void PartBytesAreOneUnchangedRunAndTheRestIsTheCoupon()
    {
        using var folder = new Folder();
        byte[] part = PartFile(folder["part.stl"]);
        var layout = new PlateLayout(new Plate(60, 60), [PlatePart.FromBinaryStl(folder["part.stl"]), Part(Box(20, 20, 0, 25, 25, 4))]);
        PlacedCoupon placed = layout.Place(Coupon(14, 9, 8), PlacementWish.Corner)!;
        using var stream = new MemoryStream();
        double distance = PlateMerge.WriteStl(stream, layout, "plate");
        byte[] merged = stream.ToArray();
        Assert.Equal(36u, BinaryPrimitives.ReadUInt32LittleEndian(merged.AsSpan(80)));
        Assert.Equal(part[84..], merged[84..(84 + part.Length - 84)]);
        int rest = 84 + 24 * 50;
        Assert.Equal(Written(placed.ToMesh()), merged[rest..]);
        Assert.Equal(PlateMerge.Measure(layout), distance);
    }

    [Fact]
    public void TheMeasuredDistanceIsTheTrueOneNotThatOfBoxes()
    {
        var layout = new PlateLayout(new Plate(80, 80), [Part(Ring(18, 30, 0, 12))]);
        layout.Place(Coupon(20, 10, 8), PlacementWish.Near(0, 0));
        double corner = Math.Sqrt(10 * 10 + 5 * 5);
        Assert.InRange(PlateMerge.Measure(layout), 18 * Math.Cos(Math.PI / 64) - corner, 18 - corner);
    }

    [Fact]
    public void AMissingOrCutPartIsAnInputError()
    {
        using var folder = new Folder();
        Assert.Throws<InputException>(() => PlatePart.FromBinaryStl(folder["none.stl"]));
        byte[] part = PartFile(folder["part.stl"]);
        File.WriteAllBytes(folder["cut.stl"], part[..^20]);
        Assert.Throws<InputException>(() => PlatePart.FromBinaryStl(folder["cut.stl"]));
        BinaryPrimitives.WriteSingleLittleEndian(part.AsSpan(84 + 12), float.NaN);
        File.WriteAllBytes(folder["nan.stl"], part);
        PlatePart bad = PlatePart.FromBinaryStl(folder["nan.stl"]);
        Assert.Throws<InputException>(() => new PlateLayout(new Plate(60, 60), [bad]));
    }

    [Fact]
    public void AFailingWorkerEndsThePass()
    {
        PlatePart part = Part(Enumerable.Range(0, 3000).Select(i => Box(i, 0, 0, i + 1, 1, 1)).ToArray());
        Assert.Throws<AggregateException>(() => FacetPipeline.Run(part, _ => { }, () => _ => throw new InvalidOperationException("bad")));
    }

    private static byte[] PartFile(string path)
    {
        using (FileStream file = File.Create(path)) StlWriter.Write(file, Box(-5, -5, 0, 5, 5, 9), "part");
        byte[] bytes = File.ReadAllBytes(path);
        for (int facet = 0; facet < 12; facet++) BinaryPrimitives.WriteUInt16LittleEndian(bytes.AsSpan(84 + 50 * facet + 48), (ushort)(0x8000 + facet));
        File.WriteAllBytes(path, bytes);
        return bytes;
    }

    private static byte[] Written(TriangleMesh mesh)
    {
        using var stream = new MemoryStream();
        StlWriter.Write(stream, mesh, "");
        return stream.ToArray()[84..];
    }

    private sealed class Folder : IDisposable
    {
        private readonly string root = Directory.CreateTempSubdirectory("calibgeom-").FullName;

        internal string this[string name] => Path.Combine(root, name);

        public void Dispose() => Directory.Delete(root, recursive: true);
    }
}
