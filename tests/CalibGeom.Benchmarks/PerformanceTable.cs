using System.Diagnostics;
using CalibGeom.Inspection.Topology;
using CalibGeom.Meshes;
using CalibGeom.Planar;
using CalibGeom.Solids;

namespace CalibGeom.Benchmarks;

/// <summary>
/// The table of docs/performance.md, printed in one run: each work and its baseline one after the other, several times,
/// the least processor time of each. Processor time of all threads, not time on the wall, so that other work on the
/// machine changes it little.
/// </summary>
internal static class PerformanceTable
{
    /// <summary>Prints the rows whose name holds a text; all, and how the work grows, by default.</summary>
    internal static void Print(TextWriter writer, string named = "")
    {
        writer.WriteLine("| work | ms | allocated, MB | baseline | ms | ratio |");
        writer.WriteLine("|---|---|---|---|---|---|");
        foreach (PerformanceWork work in Named(named))
            Row(writer, work);
        PerformanceWorks.Delete();
        if (named.Length > 0)
            return;
        writer.WriteLine();
        Exponents(writer);
    }

    /// <summary>Does the works whose name holds a text over and over, for a profiler beside it.</summary>
    internal static void Repeat(string named, double seconds)
    {
        foreach (PerformanceWork work in Named(named))
        {
            Action action = work.Prepare().Work;
            var watch = Stopwatch.StartNew();
            do action();
            while (watch.Elapsed.TotalSeconds < seconds);
        }
        PerformanceWorks.Delete();
    }

    private static IEnumerable<PerformanceWork> Named(string text) =>
        PerformanceWorks.All.Where(w => Holds(w.Name, text));

    private static bool Holds(string name, string text) => name.Contains(text, StringComparison.Ordinal);

    /// <summary>How the work grows, alone.</summary>
    internal static void Exponents(TextWriter writer, string named = "")
    {
        writer.WriteLine("| work | sizes | ms | fitted exponent |");
        writer.WriteLine("|---|---|---|---|");
        foreach ((string work, int[] sizes, Func<int, Action> of) in Grown.Where(g => Holds(g.Work, named)))
            Fit(writer, work, sizes, of);
    }

    private static IEnumerable<(string Work, int[] Sizes, Func<int, Action> Of)> Grown =>
        [
            ("columns to a mesh", [10, 100, 1_000, 10_000], n => () => PerformanceShapes.Columns(n).ToMesh()),
            (
                "outline and prism of many edges",
                [1_000, 10_000, 100_000, 1_000_000],
                n => () => Prism(PerformanceShapes.Star(n, 1000.0 / n))
            ),
            (
                "outline and prism of spikes of 10 mm, ever thinner",
                [1_000, 10_000, 100_000],
                n => () => Prism(PerformanceShapes.Star(n, 10))
            ),
            (
                "ring between two outlines of many edges",
                [30_000, 100_000],
                n =>
                    () =>
                        Prism(
                            new Region(
                                PerformanceShapes.Star(n, 1000.0 / n),
                                PerformanceShapes.Star(n, 1000.0 / n, radius: 800)
                            )
                        )
            ),
            ("topology with crossings", [100_000, 1_000_000, 3_000_000], Topology),
        ];

    private static void Prism(Region section) => new Solid(Loft.Prism(section, 0, 5)).ToMesh();

    private static Action Topology(int triangles)
    {
        TriangleMesh mesh = MillionTriangles.Torus(triangles);
        return () => MeshTopology.Run(mesh);
    }

    private static void Fit(TextWriter writer, string work, int[] sizes, Func<int, Action> of)
    {
        double[] times = [.. sizes.Select(n => ProcessorTime.Least(n > 10_000 ? 1 : 4, of(n), () => { }).Work)];
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

    private static void Row(TextWriter writer, PerformanceWork row)
    {
        (Action work, Action? baseline) = row.Prepare();
        (double ms, double known) = ProcessorTime.Least(row.Rounds, work, baseline ?? (() => { }));
        long before = GC.GetTotalAllocatedBytes(precise: true);
        work();
        double allocated = (GC.GetTotalAllocatedBytes(precise: true) - before) / 1e6;
        double? other = baseline is null ? PeerPlate.Time() : known;
        string than = other is { } o ? FormattableString.Invariant($"{o:0.0} | {ms / o:0.00}") : "not installed | -";
        writer.WriteLine(
            FormattableString.Invariant($"| {row.Name} | {ms:0.0} | {allocated:0.0} | {row.Baseline} | {than} |")
        );
    }
}
