namespace CalibGeom.Features;

/// <summary>What a misspelt word was meant to be.</summary>
public static class Spelling
{
    /// <summary>The nearest of some words, if it is near enough to be what was meant; the first of equals.</summary>
    /// <param name="word">The word as written.</param>
    /// <param name="known">The words there are.</param>
    /// <param name="farthest">The most edits between them.</param>
    public static string? Nearest(string word, IEnumerable<string> known, int farthest)
    {
        ArgumentNullException.ThrowIfNull(known);
        (string? best, int distance) = (null, farthest + 1);
        foreach (string candidate in known)
        {
            int edits = Distance(word, candidate);
            if (edits < distance)
                (best, distance) = (candidate, edits);
        }
        return best;
    }

    /// <summary>
    /// Edits between two words: letters put in, left out, changed, or two neighbours swapped (Damerau, 1964; no letter
    /// is edited twice).
    /// </summary>
    /// <param name="a">A word.</param>
    /// <param name="b">Another.</param>
    public static int Distance(string a, string b)
    {
        ArgumentNullException.ThrowIfNull(a);
        ArgumentNullException.ThrowIfNull(b);
        var d = new int[a.Length + 1, b.Length + 1];
        for (int i = 0; i <= a.Length; i++)
            d[i, 0] = i;
        for (int j = 0; j <= b.Length; j++)
            d[0, j] = j;
        for (int i = 1; i <= a.Length; i++)
        for (int j = 1; j <= b.Length; j++)
        {
            int changed = d[i - 1, j - 1] + (a[i - 1] == b[j - 1] ? 0 : 1);
            d[i, j] = Math.Min(changed, Math.Min(d[i - 1, j], d[i, j - 1]) + 1);
            if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                d[i, j] = Math.Min(d[i, j], d[i - 2, j - 2] + 1);
        }
        return d[a.Length, b.Length];
    }
}
