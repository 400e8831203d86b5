using System.Diagnostics;
using CalibGeom.Formats.Stl;
using CalibGeom.Inspection.Layers;
using CalibGeom.Inspection.Topology;
using CalibGeom.Meshes;
using CalibGeom.Planar;
using CalibGeom.Slicing;
using CalibGeom.Solids;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Benchmarks;

/// <summary>
/// The table of docs/performance.md, printed in one run: each work and its baseline one after the other, several times,
/// the least processor time of each. Processor time of all threads, not time on the wall, so that other work on the
/// machine changes it little.
/// </summary>
internal static class PerformanceTable
{
    private const string Manifold = "plate.mjs";

    internal static void Print(TextWriter writer)
    {
        writer.WriteLine("| work | ms | baseline | ms | ratio |");
        writer.WriteLine("|---|---|---|---|---|");
        Make(writer);
        Triangles(writer);
        Overlaps(writer);
        writer.WriteLine();
        Exponents(writer);
    }

    /// <summary>How the work grows, alone.</summary>
    internal static void Exponents(TextWriter writer)
    {
        writer.WriteLine("| work | sizes | ms | fitted exponent |");
        writer.WriteLine("|---|---|---|---|");
        Fits(writer);
    }

    private static void Make(TextWriter writer)
    {
        (double plate, _) = Least(40, () => Plate().ToMesh(), () => { });
        double? peer = Peer();
        Row(writer, "plate, three cups, ten leaning columns", plate, "Manifold 3.5.4 (WebAssembly), same shape", peer);
        TestObjectSpec spec = Presets.Standard;
        TestObject made = TestObjectBuilder.Build(spec);
        (double whole, double mesh) = Least(25, () => Write(TestObjectBuilder.Build(spec)), () => made.Solid!.ToMesh());
        Row(writer, "`standard`, spec to STL bytes", whole, "its solid to a mesh alone", mesh);
    }

    private static void Triangles(TextWriter writer)
    {
        TriangleMesh torus = MillionTriangles.Torus();
        float[] corners = [.. torus.Coordinates.ToArray().Select(c => (float)c)];
        int[] triangles = torus.Triangles.ToArray();
        using var stream = new MemoryStream(64 << 20);
        (double write, double plain) = Least(
            7,
            () =>
            {
                stream.Position = 0;
                StlWriter.Write(stream, torus, "table");
            },
            () => PlainWrite(stream, corners, triangles)
        );
        Row(writer, "write 1 M triangles", write, "plain loop without normals", plain);
        string path = Path.Combine(Path.GetTempPath(), $"calibgeom-table-{Environment.ProcessId}.stl");
        using (FileStream file = File.Create(path))
            StlWriter.Write(file, torus, "table");
        (double read, double bytes) = Least(7, () => StlReader.Read(path), () => Sum(path));
        Row(writer, "read and weld 1 M", read, "reading and summing the bytes", bytes);
        (double topology, double again) = Least(2, () => MeshTopology.Examine(torus), () => Sum(path));
        Row(writer, "topology with crossings, 1 M", topology, "the same", Math.Min(again, bytes));
        (double slices, double checks) = Least(
            1,
            () => new LayerSlicer(torus, 0.04).Slice().Sum(l => l.Area),
            () => LayerInspection.Run(torus, new LayerSettings { LayerHeight = 0.04 })
        );
        Row(writer, "1,000 layers, slices", slices, "the same", bytes);
        Row(writer, "1,000 layers, all checks", checks, "the same", bytes);
        File.Delete(path);
    }

    private static void Overlaps(TextWriter writer)
    {
        TriangleMesh one = Block(0, 40),
            two = TriangleMesh.Join([Block(0, 20.5), Block(19.5, 40)]);
        (double overlapping, double block) = Least(3, () => LayerInspection.Run(two), () => LayerInspection.Run(one));
        Row(writer, "layers of a block as two boxes that overlap", overlapping, "layers of the block", block);
    }

    private static void Fits(TextWriter writer)
    {
        Fit(writer, "columns to a mesh", [10, 100, 1_000, 10_000], n => () => Columns(n).ToMesh());
        Fit(
            writer,
            "outline and prism of many edges",
            [1_000, 10_000, 100_000, 1_000_000],
            n => () => new Solid(Loft.Prism(Star(n, 1000.0 / n), 0, 5)).ToMesh()
        );
        Fit(
            writer,
            "outline and prism of spikes of 10 mm, ever thinner",
            [1_000, 10_000, 100_000],
            n => () => new Solid(Loft.Prism(Star(n, 10), 0, 5)).ToMesh()
        );
        Fit(
            writer,
            "topology with crossings",
            [100_000, 1_000_000, 3_000_000],
            n =>
            {
                TriangleMesh mesh = MillionTriangles.Torus(n);
                return () => MeshTopology.Examine(mesh);
            }
        );
    }

    private static void Fit(TextWriter writer, string work, int[] sizes, Func<int, Action> of)
    {
        double[] times = [.. sizes.Select(n => Least(n > 10_000 ? 1 : 4, of(n), () => { }).Work)];
        // Least squares of ln t over ln n.
        double[] x = [.. sizes.Select(n => Math.Log(n))],
            y = [.. times.Select(t => Math.Log(t))];
        double mean = x.Average(),
            exponent = x.Zip(y, (a, b) => (a - mean) * b).Sum() / x.Sum(a => (a - mean) * (a - mean));
        writer.WriteLine(
            FormattableString.Invariant(
                $"| {work} | {string.Join(", ", sizes)} | {string.Join(", ", times.Select(t => FormattableString.Invariant($"{t:0.#}")))} | {exponent:0.00} |"
            )
        );
    }

    private static void Row(TextWriter writer, string work, double ms, string baseline, double? than) =>
        writer.WriteLine(
            than is { } other
                ? FormattableString.Invariant($"| {work} | {ms:0.0} | {baseline} | {other:0.0} | {ms / other:0.00} |")
                : FormattableString.Invariant($"| {work} | {ms:0.0} | {baseline} | not installed | - |")
        );

    /// <summary>The least processor time of each, ms, taken in turn when both are warm.</summary>
    private static (double Work, double Baseline) Least(int rounds, Action work, Action baseline)
    {
        Warm(work);
        Warm(baseline);
        (double, double) best = (double.PositiveInfinity, double.PositiveInfinity);
        for (int i = 0; i < rounds; i++)
            best = (Math.Min(best.Item1, Time(work)), Math.Min(best.Item2, Time(baseline)));
        return best;
    }

    /// <summary>
    /// The runtime compiles anew what is called thirty times, beside the work and into its processor time: it is given
    /// the calls, or some seconds of them, and the time to be done.
    /// </summary>
    private static void Warm(Action action)
    {
        var watch = Stopwatch.StartNew();
        for (int i = 0; i < 40 && (i == 0 || watch.Elapsed.TotalSeconds < 4); i++)
            action();
        Thread.Sleep(300);
    }

    private static double Time(Action action)
    {
        TimeSpan before = Environment.CpuUsage.TotalTime;
        action();
        return (Environment.CpuUsage.TotalTime - before).TotalMilliseconds;
    }

    /// <summary>The same plate by Manifold, where tests/peers has installed it.</summary>
    private static double? Peer()
    {
        string? folder = AppContext.BaseDirectory;
        while (folder is not null && !Directory.Exists(Path.Combine(folder, "tests", "peers")))
            folder = Path.GetDirectoryName(folder);
        if (folder is null || !Directory.Exists(Path.Combine(folder, "tests", "peers", "node_modules")))
            return null;
        using Process node = Process.Start(
            new ProcessStartInfo("node", [Manifold])
            {
                WorkingDirectory = Path.Combine(folder, "tests", "peers"),
                RedirectStandardOutput = true,
            }
        )!;
        string said = node.StandardOutput.ReadToEnd();
        node.WaitForExit();
        return double.Parse(said, System.Globalization.CultureInfo.InvariantCulture);
    }

    private static void Write(TestObject made)
    {
        using var stream = new MemoryStream();
        StlWriter.Write(stream, made.ToMesh(), "table");
    }

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
                System
                    .Runtime.InteropServices.MemoryMarshal.AsBytes(corners.AsSpan(3 * triangles[i + k], 3))
                    .CopyTo(buffer.AsSpan(at + 12 + 12 * k));
        }
        stream.Write(buffer, 0, at);
    }

    private static long Sum(string path)
    {
        long sum = 0;
        foreach (byte b in File.ReadAllBytes(path))
            sum += b;
        return sum;
    }

    private static Solid Plate()
    {
        var lofts = new List<Loft> { Loft.Prism(Outline.Rectangle(-30, -20, 30, 20), 0, 3) };
        for (int i = 0; i < 3; i++)
        {
            Outline outer = Outline.Circle(18 * i - 18, 5, 12, 64),
                inner = Outline.Circle(18 * i - 18, 5, 10, 64);
            lofts.Add(Loft.Prism(outer, 3, 4));
            lofts.Add(Loft.Prism(new Region(outer, inner), 4, 14));
        }
        for (int i = 0; i < 10; i++)
        {
            Outline foot = Outline.Circle(4 * i - 20, -10, 0.3 + 0.1 * i, 32);
            lofts.Add(new Loft(foot, 3, foot.Translate(1, 0.5), 10));
        }
        return new Solid(lofts);
    }

    private static Solid Columns(int count)
    {
        int side = (int)Math.Ceiling(Math.Sqrt(count));
        var lofts = new List<Loft> { Loft.Prism(Outline.Rectangle(-2, -2, 2 * side, 2 * side), 0, 2) };
        for (int i = 0; i < count; i++)
        {
            Outline shaft = Outline.Circle(2 * (i % side), 2 * (i / side), 0.6, 32),
                head = Outline.Circle(2 * (i % side), 2 * (i / side), 0.9, 32);
            lofts.Add(Loft.Prism(shaft, 2, 6));
            lofts.Add(new Loft(shaft, 6, head, 6.3));
            lofts.Add(Loft.Prism(head, 6.3, 6.6));
        }
        return new Solid(lofts);
    }

    /// <summary>A zigzag about a circle, its teeth so high, mm.</summary>
    private static Outline Star(int edges, double height) =>
        Outline.FromMillimetres(
            Enumerable
                .Range(0, edges)
                .Select(i =>
                {
                    (double sin, double cos) = Math.SinCos(2 * Math.PI * i / edges);
                    double radius = i % 2 == 0 ? 900 : 900 - height;
                    return (radius * cos, radius * sin);
                })
        );

    private static TriangleMesh Block(double from, double to) =>
        new Solid(Loft.Prism(Outline.Rectangle(from, 0, to, 40), 0, 20)).ToMesh();
}
