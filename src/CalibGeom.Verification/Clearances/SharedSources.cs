namespace CalibGeom.Verification.Clearances;

/// <summary>
/// Which sources get a column of their own, and the blocks of rows that the others leave connected: those of more rows
/// than a number, the one with which a factorisation takes the fewest steps.
/// </summary>
internal sealed class SharedSources
{
    private readonly Dictionary<int, int> columns;

    private SharedSources(int[] sources, int[][] blocks)
    {
        Sources = sources;
        Blocks = blocks;
        columns = sources.Select((k, i) => (k, i)).ToDictionary(p => p.k, p => p.i);
    }

    /// <summary>Sources that have a column, in its order.</summary>
    internal int[] Sources { get; }

    /// <summary>Rows that other sources connect, each list ascending.</summary>
    internal int[][] Blocks { get; }

    /// <summary>The column of a source, or null.</summary>
    internal int? ColumnOf(int source) => columns.TryGetValue(source, out int column) ? column : null;

    internal static SharedSources Of(
        IReadOnlyList<(int Source, double Factor)[]> errors,
        IReadOnlyList<double> u,
        int coefficients
    )
    {
        int[][] rowsOf = RowsOf(errors, u);
        SharedSources? best = null;
        double least = double.PositiveInfinity;
        for (long most = errors.Count; most > 0; most /= 2)
        {
            SharedSources next = Of(errors.Count, rowsOf, most);
            double columns = next.Sources.Length + coefficients,
                steps =
                    2 * (errors.Count + next.Sources.Length) * columns * columns
                    + next.Blocks.Sum(b => Math.Pow(b.Length, 3) / 3 + b.Length * (double)b.Length * columns);
            if (steps < least)
                (best, least) = (next, steps);
        }
        return best ?? new SharedSources([], []);
    }

    private static int[][] RowsOf(IReadOnlyList<(int Source, double Factor)[]> errors, IReadOnlyList<double> u)
    {
        List<int>[] rows = [.. u.Select(_ => new List<int>())];
        for (int row = 0; row < errors.Count; row++)
            foreach ((int k, double a) in errors[row])
                if (a * u[k] != 0)
                    rows[k].Add(row);
        return [.. rows.Select(r => r.ToArray())];
    }

    private static SharedSources Of(int count, int[][] rowsOf, long most)
    {
        int[] parent = [.. Enumerable.Range(0, count)];
        int Root(int i)
        {
            while (parent[i] != i)
                i = parent[i] = parent[parent[i]];
            return i;
        }
        foreach (int[] rows in rowsOf.Where(r => r.Length <= most))
            for (int i = 1; i < rows.Length; i++)
                parent[Root(rows[i])] = Root(rows[0]);
        return new SharedSources(
            [.. Enumerable.Range(0, rowsOf.Length).Where(k => rowsOf[k].Length > most)],
            [.. Enumerable.Range(0, count).GroupBy(Root).Select(g => g.ToArray())]
        );
    }
}
