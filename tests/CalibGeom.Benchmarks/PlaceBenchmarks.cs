using BenchmarkDotNet.Attributes;
using CalibGeom.Formats.Stl;
using CalibGeom.Meshes;
using CalibGeom.Plates;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Benchmarks;

/// <summary>
/// A witness coupon merged beside a binary STL of 200 MB (survey, shadow, search, merge and proof together) against a
/// plain loop that reads that file and writes it again through a buffer of 1 MiB. The column Ratio is the answer.
/// </summary>
[SimpleJob(launchCount: 1, warmupCount: 1, iterationCount: 5)]
[MemoryDiagnoser]
public class PlaceBenchmarks
{
    private const int Columns = 1414;

    private string folder = "";
    private Coupon coupon = new("none", new TriangleMesh([0, 0, 0, 1, 0, 0, 0, 1, 0], [0, 1, 2]));

    private string Source => Path.Combine(folder, "part.stl");

    private string Destination => Path.Combine(folder, "out.stl");

    /// <summary>Writes the part: a closed block with a wavy top, 4 million triangles.</summary>
    [GlobalSetup]
    public void Setup()
    {
        folder = Directory.CreateTempSubdirectory("calibgeom-").FullName;
        using (FileStream file = File.Create(Source))
            StlWriter.Write(file, WavyBlock(), "part");
        TestObject made = TestObject.Of(Presets.Witness);
        coupon = new Coupon("witness", made.ToMesh(), made.Features);
    }

    /// <summary>Removes the files.</summary>
    [GlobalCleanup]
    public void Cleanup() => Directory.Delete(folder, recursive: true);

    /// <summary>The part read and written with a buffer of 1 MiB.</summary>
    [Benchmark(Baseline = true)]
    public long Copy()
    {
        using var source = new FileStream(Source, FileMode.Open, FileAccess.Read, FileShare.Read, 1);
        using var destination = new FileStream(Destination, FileMode.Create, FileAccess.Write, FileShare.None, 1);
        byte[] buffer = new byte[1 << 20];
        for (int got; (got = source.Read(buffer)) > 0; )
            destination.Write(buffer, 0, got);
        return destination.Length;
    }

    /// <summary>A coupon placed beside the part, both written, the distance measured.</summary>
    [Benchmark]
    public double Place()
    {
        var layout = new PlateLayout(new Plate(150, 90), [PlatePart.Open(Source)]);
        if (layout.Place(coupon, PlacementWish.NearParts) is null)
            throw new InvalidOperationException("The plate has room for the coupon.");
        using var destination = new FileStream(Destination, FileMode.Create, FileAccess.Write, FileShare.None, 1);
        return PlateMerge.WriteStl(destination, layout, "plate");
    }

    private static TriangleMesh WavyBlock()
    {
        var coordinates = new List<double>();
        for (int layer = 0; layer < 2; layer++)
        for (int row = 0; row <= Columns / 2; row++)
        for (int column = 0; column <= Columns; column++)
            coordinates.AddRange([
                -60 + 80.0 * column / Columns,
                -30 + 60.0 * row / (Columns / 2),
                layer == 0 ? 0 : 20 + Math.Sin(column * 0.05) * Math.Cos(row * 0.07),
            ]);
        var triangles = new List<int>();
        int width = Columns + 1,
            rows = Columns / 2,
            top = width * (rows + 1);
        for (int row = 0; row < rows; row++)
        for (int column = 0; column < Columns; column++)
        {
            int a = row * width + column,
                b = a + 1,
                c = a + width,
                d = c + 1;
            triangles.AddRange([a, c, b, b, c, d, top + a, top + b, top + c, top + b, top + d, top + c]);
        }
        for (int column = 0; column < Columns; column++)
            Wall(column, column + 1);
        for (int row = 0; row < rows; row++)
            Wall(row * width + Columns, (row + 1) * width + Columns);
        for (int column = Columns; column > 0; column--)
            Wall(rows * width + column, rows * width + column - 1);
        for (int row = rows; row > 0; row--)
            Wall(row * width, (row - 1) * width);
        return new TriangleMesh(coordinates.ToArray(), triangles.ToArray());

        void Wall(int from, int to) => triangles.AddRange([from, to, top + to, from, top + to, top + from]);
    }
}
