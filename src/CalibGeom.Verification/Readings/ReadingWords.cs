namespace CalibGeom.Verification.Readings;

/// <summary>The words of readings files.</summary>
internal static class ReadingWords
{
    private static readonly (string Word, FeltFit Fit)[] Fits =
    [
        ("refuses", FeltFit.Refuses),
        ("binds", FeltFit.Binds),
        ("slides", FeltFit.Slides),
        ("rattles", FeltFit.Rattles),
    ];

    private static readonly (string Word, ColumnStage Stage)[] Stages =
    [
        ("lost", ColumnStage.Lost),
        ("plate", ColumnStage.Plate),
        ("wash", ColumnStage.Wash),
        ("cure", ColumnStage.Cure),
    ];

    private static readonly (string Word, PartState State)[] States =
    [
        ("washed", PartState.Washed),
        ("dry", PartState.Dry),
        ("post-cured", PartState.PostCured),
    ];

    private static readonly (string Word, Jaw Jaw)[] Jaws =
    [
        ("outside", Jaw.Outside),
        ("inside", Jaw.Inside),
        ("depth", Jaw.Depth),
    ];

    internal static string FitList => string.Join(", ", Fits.Select(f => f.Word));

    internal static string StageList => string.Join(", ", Stages.Select(f => f.Word));

    internal static string StateList => string.Join(", ", States.Select(f => f.Word));

    internal static string JawList => string.Join(", ", Jaws.Select(f => f.Word));

    internal static FeltFit? ToFit(string word) => Find(Fits, word);

    internal static ColumnStage? ToStage(string word) => Find(Stages, word);

    internal static PartState? ToState(string word) => Find(States, word);

    internal static Jaw? ToJaw(string word) => Find(Jaws, word);

    internal static string Of(FeltFit fit) => Array.Find(Fits, f => f.Fit == fit).Word;

    internal static string Of(ColumnStage stage) => Array.Find(Stages, s => s.Stage == stage).Word;

    internal static string Of(PartState state) => Array.Find(States, s => s.State == state).Word;

    internal static string Of(Jaw jaw) => Array.Find(Jaws, s => s.Jaw == jaw).Word;

    /// <summary>The nearest of some words if it is near enough to be what was meant.</summary>
    internal static string? Nearest(string word, IEnumerable<string> known, int farthest)
    {
        (string? best, int distance) = (null, farthest + 1);
        foreach (string candidate in known)
        {
            int d = Distance(word, candidate);
            if (d < distance)
                (best, distance) = (candidate, d);
        }
        return best;
    }

    /// <summary>Edit distance with insertions, deletions and replacements (Levenshtein, 1966).</summary>
    internal static int Distance(string a, string b)
    {
        int[] row = Enumerable.Range(0, b.Length + 1).ToArray();
        for (int i = 1; i <= a.Length; i++)
        {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= b.Length; j++)
            {
                int replaced = diagonal + (a[i - 1] == b[j - 1] ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.Min(replaced, 1 + Math.Min(row[j], row[j - 1]));
            }
        }
        return row[b.Length];
    }

    private static T? Find<T>((string Word, T Value)[] words, string word)
        where T : struct
    {
        foreach ((string known, T value) in words)
            if (known.Equals(word, StringComparison.OrdinalIgnoreCase))
                return value;
        return null;
    }
}
