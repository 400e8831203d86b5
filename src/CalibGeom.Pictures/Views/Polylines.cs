namespace CalibGeom.Pictures.Views;

/// <summary>Joins lines that meet end to end, so that a picture has fewer and longer ones.</summary>
internal static class Polylines
{
    internal static IReadOnlyList<(double X, double Y)[]> Join(IReadOnlyList<(double X, double Y)[]> lines)
    {
        var at = new Dictionary<(long, long), List<int>>();
        for (int i = 0; i < lines.Count; i++)
            foreach ((double X, double Y) end in Ends(lines[i]))
            {
                if (!at.TryGetValue(Key(end), out List<int>? list))
                    at[Key(end)] = list = [];
                list.Add(i);
            }
        var used = new bool[lines.Count];
        var joined = new List<(double X, double Y)[]>();
        for (int i = 0; i < lines.Count; i++)
            if (!used[i])
            {
                used[i] = true;
                var chain = new LinkedList<(double X, double Y)>(lines[i]);
                while (Next(lines, at, used, chain.Last!.Value) is { } p)
                    chain.AddLast(p);
                while (Next(lines, at, used, chain.First!.Value) is { } p)
                    chain.AddFirst(p);
                joined.Add([.. chain]);
            }
        return joined;
    }

    private static (double X, double Y)? Next(
        IReadOnlyList<(double X, double Y)[]> lines,
        Dictionary<(long, long), List<int>> at,
        bool[] used,
        (double X, double Y) end
    )
    {
        foreach (int i in at.GetValueOrDefault(Key(end), []))
            if (!used[i])
            {
                used[i] = true;
                return Key(lines[i][0]) == Key(end) ? lines[i][^1] : lines[i][0];
            }
        return null;
    }

    private static (double X, double Y)[] Ends((double X, double Y)[] line) => [line[0], line[^1]];

    private static (long, long) Key((double X, double Y) p) =>
        ((long)Math.Round(p.X * 1000), (long)Math.Round(p.Y * 1000));
}
