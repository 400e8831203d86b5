using System.Collections.Concurrent;
using CalibGeom.Formats.Stl;

namespace CalibGeom.Plates;

/// <summary>
/// Goes through a part once: in order on the calling thread, and at the same time on others where order does not
/// matter.
/// </summary>
internal static class FacetPipeline
{
    private const int Buffers = 8;

    /// <summary>Runs through a part; returns when every block has been seen by both.</summary>
    /// <param name="part">The part.</param>
    /// <param name="inOrder">Sees every block, in order.</param>
    /// <param name="worker">Makes a visitor; each sees some of the blocks, on a thread of its own, and every block is
    /// seen by one.</param>
    internal static void Run(PlatePart part, FacetVisitor inOrder, Func<FacetVisitor> worker)
    {
        using var full = new BlockingCollection<(StlFacet[] Block, int Count)>();
        using var empty = new BlockingCollection<StlFacet[]>();
        using var failed = new CancellationTokenSource();
        for (int i = 0; i < Buffers; i++)
            empty.Add([]);
        Task[] tasks = Enumerable
            .Range(0, Math.Clamp(Environment.ProcessorCount, 1, 4))
            .Select(_ => Task.Run(() => Drain(full, empty, worker(), failed)))
            .ToArray();
        try
        {
            part.Visit(facets =>
            {
                StlFacet[] block = empty.Take(failed.Token);
                if (block.Length < facets.Length)
                    block = new StlFacet[facets.Length];
                facets.CopyTo(block);
                full.Add((block, facets.Length));
                inOrder(facets);
            });
        }
        finally
        {
            full.CompleteAdding();
            Task.WaitAll(tasks);
        }
    }

    private static void Drain(
        BlockingCollection<(StlFacet[] Block, int Count)> full,
        BlockingCollection<StlFacet[]> empty,
        FacetVisitor visit,
        CancellationTokenSource failed
    )
    {
        try
        {
            foreach ((StlFacet[] block, int count) in full.GetConsumingEnumerable())
            {
                visit(block.AsSpan(0, count));
                empty.Add(block);
            }
        }
        catch
        {
            failed.Cancel();
            throw;
        }
    }
}
