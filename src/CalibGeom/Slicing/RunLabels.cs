using CalibGeom.Meshes;

namespace CalibGeom.Slicing;

/// <summary>The connected pieces of a mask: a piece number for each run.</summary>
internal sealed class RunLabels
{
    private readonly int[] ofRun;

    /// <summary>
    /// Finds the pieces; with <paramref name="diagonal"/> pixels that touch at a corner belong together.
    /// </summary>
    internal RunLabels(LayerMask mask, bool diagonal)
    {
        var sets = new UnionFind(mask.RunCount);
        for (int y = 1; y < mask.Grid.Height; y++)
            RunPairs.Visit(
                mask.Row(y),
                mask.FirstRun(y),
                mask.Row(y - 1),
                mask.FirstRun(y - 1),
                diagonal ? 1 : 0,
                (a, b) => sets.Join(a, b)
            );
        ofRun = sets.Number(out int count);
        Count = count;
    }

    internal int Count { get; }

    internal int this[int run] => ofRun[run];
}
