using CalibGeom.Planar;

namespace CalibGeom.Pictures.Views;

/// <summary>Joins lines that meet end to end, so that a picture has fewer and longer ones.</summary>
internal static class Polylines
{
    internal static IReadOnlyList<Vector2D[]> Join(IReadOnlyList<Vector2D[]> lines)
    {
        var at = new Dictionary<(long, long), List<int>>();
        for (int i = 0; i < lines.Count; i++)
            foreach (Vector2D end in Ends(lines[i]))
            {
                if (!at.TryGetValue(Key(end), out List<int>? list))
                    at[Key(end)] = list = [];
                list.Add(i);
            }
        var used = new bool[lines.Count];
        var joined = new List<Vector2D[]>();
        for (int i = 0; i < lines.Count; i++)
            if (!used[i])
            {
                used[i] = true;
                var chain = new LinkedList<Vector2D>(lines[i]);
                while (Next(lines, at, used, chain.Last!.Value) is { } p)
                    chain.AddLast(p);
                while (Next(lines, at, used, chain.First!.Value) is { } p)
                    chain.AddFirst(p);
                joined.Add([.. chain]);
            }
        return joined;
    }

    private static Vector2D? Next(
        IReadOnlyList<Vector2D[]> lines,
        Dictionary<(long, long), List<int>> at,
        bool[] used,
        Vector2D end
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

    private static Vector2D[] Ends(Vector2D[] line) => [line[0], line[^1]];

    private static (long, long) Key(Vector2D p) => ((long)Math.Round(p.X * 1000), (long)Math.Round(p.Y * 1000));
}
