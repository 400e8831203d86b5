using System.Buffers.Binary;
using CalibGeom.Formats;
using CalibGeom.Formats.Stl;
using CalibGeom.Formats.ThreeMf;
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
        var layout = new PlateLayout(
            new Plate(60, 60),
            [new StlFilePart(folder["part.stl"], folder["part.stl"]), Part(Box(20, 20, 0, 25, 25, 4))]
        );
        PlacedCoupon placed = layout.Place(Coupon(14, 9, 8), PlacementWish.Corner)!;
        using var stream = new MemoryStream();
        double distance = PlateMerge.WriteStl(stream, layout, "plate");
        byte[] merged = stream.ToArray();
        Assert.Equal(36u, BinaryPrimitives.ReadUInt32LittleEndian(merged.AsSpan(80)));
        Assert.Equal(part[84..], merged[84..(84 + part.Length - 84)]);
        int rest = 84 + 24 * 50;
        Assert.Equal(Written(placed.ToMesh()), merged[rest..]);
        Assert.Equal(PlateMerge.LeastDistance(layout), distance);
    }

    [Fact]
    public void AMergeThatDoesNotKeepTheGapIsRefused()
    {
        using var folder = new Folder();
        PartFile(folder["part.stl"]);
        var layout = new PlateLayout(new Plate(60, 60), [new StlFilePart(folder["part.stl"], folder["part.stl"])]);
        PlacedCoupon placed = layout.Place(Coupon(14, 9, 8), PlacementWish.Corner)!;
        Assert.True(PlateMerge.WriteStl(Stream.Null, layout, "plate") >= 2);
        // The part is exported anew, under the coupon, and bears the time it had.
        DateTime written = File.GetLastWriteTimeUtc(folder["part.stl"]);
        TriangleMesh moved = Box(
            placed.Bounds.Min.X,
            placed.Bounds.Min.Y,
            0,
            placed.Bounds.Max.X + 1,
            placed.Bounds.Max.Y + 1,
            2
        );
        using (FileStream file = File.Create(folder["part.stl"]))
            StlWriter.Write(file, moved, "part");
        Assert.Contains(
            "has changed while it was read",
            Assert.Throws<InputException>(() => PlateMerge.WriteStl(Stream.Null, layout, "plate")).Message,
            StringComparison.Ordinal
        );
        File.SetLastWriteTimeUtc(folder["part.stl"], written);
        Assert.All(
            new Action[]
            {
                () => PlateMerge.WriteStl(Stream.Null, layout, "plate"),
                () => PlateMerge.WriteCouponsStl(Stream.Null, layout, "plate"),
                () => PlateMerge.WriteThreeMf(new MemoryStream(), layout, new ThreeMfContent()),
            },
            write =>
                Assert.Contains(
                    "nearer than the gap of 2 mm",
                    Assert.Throws<InputException>(write).Message,
                    StringComparison.Ordinal
                )
        );
    }

    [Fact]
    public void TheCouponAloneIsWrittenInPlateCoordinates()
    {
        var layout = new PlateLayout(new Plate(60, 60), [Part(Box(20, 20, 3, 25, 25, 4))]);
        PlacedCoupon placed = layout.Place(Coupon(14, 9, 8), PlacementWish.Corner)!;
        using var stream = new MemoryStream();
        Assert.True(PlateMerge.WriteCouponsStl(stream, layout, "coupon") >= 2);
        Assert.Equal(Written(placed.ToMesh()), stream.ToArray()[84..]);
        Assert.Equal(3, placed.Bounds.Min.Z);
    }

    [Fact]
    public void ThreeMfKeepsPartsAndCouponsApartWithNamesAndPlaces()
    {
        TriangleMesh tall = Box(-25, -28, 0, 25, 12, 9);
        var layout = new PlateLayout(new Plate(60, 60), [PlatePart.Of("holder.obj", tall)]);
        PlacedCoupon one = layout.Place(Coupon(9, 15, 8), PlacementWish.Corner, "A1")!;
        PlacedCoupon two = layout.Place(
            new Coupon("witness", Box(1, 2, 3, 10, 17, 8)),
            PlacementWish.Near(0, 30),
            "A2"
        )!;
        Assert.Equal((90, 90), (one.Turn, two.Turn));
        using var stream = new MemoryStream();
        PlateMerge.WriteThreeMf(stream, layout, new ThreeMfContent { Title = "plate" });
        stream.Position = 0;
        MeshFile read = MeshFile.Read(stream, "plate.3mf");
        Assert.Equal(["holder", "coupon A1", "witness A2"], read.Objects.Select(o => o.Name));
        Assert.Equal(tall.Coordinates.ToArray(), read.Objects[0].Mesh.Coordinates.ToArray());
        Assert.Equal(one.ToMesh().Coordinates.ToArray(), read.Objects[1].Mesh.Coordinates.ToArray());
        Assert.Equal(two.ToMesh().Coordinates.ToArray(), read.Objects[2].Mesh.Coordinates.ToArray());
    }

    [Theory]
    [InlineData(
        "part.stl",
        "solid box\nfacet normal 0 0 1\nouter loop\nvertex 0 0 1\nvertex 8 0 1\nvertex 0 5 "
            + "1\nendloop\nendfacet\nendsolid box\n"
    )]
    [InlineData("part.obj", "v 0 0 1\nv 8 0 1\nv 0 5 1\nf 1 2 3\n")]
    public void TextFormatsAreParts(string name, string text)
    {
        using var folder = new Folder();
        File.WriteAllText(folder[name], text);
        PlatePart part = PlatePart.Open(folder[name]);
        Assert.Equal((name, 1), (part.Name, part.TriangleCount));
        Assert.Equal(new Box3D(new(0, 0, 1), new(8, 5, 1)), new PlateLayout(new Plate(60, 60), [part]).PartBounds);
    }

    [Fact]
    public void A3MfIsAPartWithItsTransformsApplied()
    {
        using var folder = new Folder();
        using (FileStream file = File.Create(folder["part.3mf"]))
            ThreeMfWriter.Write(
                file,
                [
                    new MeshObject("box", Box(0, 0, 0, 2, 4, 6))
                    {
                        Transform = Affine3D.TurnZ(90).Then(Affine3D.Shift(new(10, 0.125, 0))),
                    },
                ],
                new ThreeMfContent()
            );
        PlatePart part = PlatePart.Open(folder["part.3mf"]);
        Assert.Equal(new Box3D(new(6, 0.125, 0), new(10, 2.125, 6)), part.ToMesh().Bounds);
    }

    [Fact]
    public void ProgressIsToldAfterEachBlock()
    {
        PlatePart part = new WavyPart(20_000);
        var told = new List<double>();
        part.Progress = new Listener(told);
        part.Visit(_ => { });
        Assert.Equal(1, told[^1]);
        Assert.Equal(told.Order(), told);
        Assert.True(told.Count > 5);
    }

    [Fact]
    public void TheMeasuredDistanceIsTheTrueOneNotThatOfBoxes()
    {
        var layout = new PlateLayout(new Plate(80, 80), [Part(Ring(18, 30, 0, 12))]);
        layout.Place(Coupon(20, 10, 8), PlacementWish.Near(0, 0));
        double corner = Math.Sqrt(10 * 10 + 5 * 5);
        Assert.InRange(PlateMerge.LeastDistance(layout), 18 * Math.Cos(Math.PI / 64) - corner, 18 - corner);
    }

    [Fact]
    public void AMissingOrCutPartIsAnInputError()
    {
        using var folder = new Folder();
        Assert.Throws<InputException>(() => new StlFilePart(folder["none.stl"], folder["none.stl"]));
        byte[] part = PartFile(folder["part.stl"]);
        File.WriteAllBytes(folder["cut.stl"], part[..^20]);
        Assert.Throws<InputException>(() => new StlFilePart(folder["cut.stl"], folder["cut.stl"]));
        BinaryPrimitives.WriteSingleLittleEndian(part.AsSpan(84 + 12), float.NaN);
        File.WriteAllBytes(folder["nan.stl"], part);
        PlatePart bad = new StlFilePart(folder["nan.stl"], folder["nan.stl"]);
        Assert.Throws<InputException>(() => new PlateLayout(new Plate(60, 60), [bad]));
    }

    [Fact]
    public void AFailingWorkerEndsThePass()
    {
        PlatePart part = Part(Enumerable.Range(0, 3000).Select(i => Box(i, 0, 0, i + 1, 1, 1)).ToArray());
        Assert.Throws<AggregateException>(() =>
            FacetPipeline.Run(part, _ => { }, () => _ => throw new InvalidOperationException("bad"))
        );
    }

    private static byte[] PartFile(string path)
    {
        using (FileStream file = File.Create(path))
            StlWriter.Write(file, Box(-5, -5, 0, 5, 5, 9), "part");
        byte[] bytes = File.ReadAllBytes(path);
        for (int facet = 0; facet < 12; facet++)
            BinaryPrimitives.WriteUInt16LittleEndian(bytes.AsSpan(84 + 50 * facet + 48), (ushort)(0x8000 + facet));
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

    private sealed class Listener(List<double> told) : IProgress<double>
    {
        public void Report(double value) => told.Add(value);
    }
}
