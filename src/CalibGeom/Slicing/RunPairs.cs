namespace CalibGeom.Slicing;

/// <summary>Runs of two rows that lie over each other.</summary>
internal static class RunPairs
{
    /// <summary>
    /// Visits each pair of runs with a pixel in common, as run numbers counted from the given first ones; with a reach
    /// of 1 also pairs that touch at a corner.
    /// </summary>
    internal static void Visit(
        ReadOnlySpan<PixelRun> a,
        int firstA,
        ReadOnlySpan<PixelRun> b,
        int firstB,
        int reach,
        Action<int, int> visit
    )
    {
        for (int i = 0, j = 0; i < a.Length && j < b.Length; )
        {
            if (a[i].Start < b[j].End + reach && b[j].Start < a[i].End + reach)
                visit(firstA + i, firstB + j);
            if (a[i].End < b[j].End)
                i++;
            else
                j++;
        }
    }

    /// <summary>Visits each pair of runs of two masks that lie over each other in the same row.</summary>
    internal static void Visit(LayerMask a, LayerMask b, Action<int, int> visit)
    {
        for (int y = 0; y < a.Grid.Height; y++)
            Visit(a.Row(y), a.FirstRun(y), b.Row(y), b.FirstRun(y), 0, visit);
    }
}
