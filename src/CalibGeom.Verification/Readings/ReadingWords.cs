using System.Globalization;

namespace CalibGeom.Verification.Readings;

/// <summary>The words of readings files.</summary>
public static class ReadingWords
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

    private static readonly (string Word, Material Material)[] Materials =
    [
        ("rigid", Material.Rigid),
        ("flexible", Material.Flexible),
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

    internal static string MaterialList => string.Join(", ", Materials.Select(f => f.Word));

    internal static string JawList => string.Join(", ", Jaws.Select(f => f.Word));

    internal static FeltFit? ToFit(string word) => Find(Fits, word);

    internal static ColumnStage? ToStage(string word) => Find(Stages, word);

    internal static PartState? ToState(string word) => Find(States, word);

    internal static Material? ToMaterial(string word) => Find(Materials, word);

    internal static Jaw? ToJaw(string word) => Find(Jaws, word);

    /// <summary>The word of a fit.</summary>
    /// <param name="fit">Which.</param>
    public static string Of(FeltFit fit) => Array.Find(Fits, f => f.Fit == fit).Word;

    /// <summary>The word of a stage at which a column last stood.</summary>
    /// <param name="stage">Which.</param>
    public static string Of(ColumnStage stage) => Array.Find(Stages, s => s.Stage == stage).Word;

    /// <summary>The word of a state of a part.</summary>
    /// <param name="state">Which.</param>
    public static string Of(PartState state) => Array.Find(States, s => s.State == state).Word;

    /// <summary>The word of a material.</summary>
    /// <param name="material">Which.</param>
    public static string Of(Material material) => Array.Find(Materials, s => s.Material == material).Word;

    /// <summary>The value of a reading as a file has it: mm with two to six decimals, a number, or a word.</summary>
    /// <param name="reading">Which.</param>
    public static string Of(Reading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        return reading.Fit is { } fit ? Of(fit)
            : reading.Stage is { } stage ? Of(stage)
            : reading.Value.ToString(reading.Kind == ReadingKind.Size ? "0.00####" : "0", CultureInfo.InvariantCulture);
    }

    /// <summary>The word of a pair of jaws.</summary>
    /// <param name="jaw">Which.</param>
    public static string Of(Jaw jaw) => Array.Find(Jaws, s => s.Jaw == jaw).Word;

    private static T? Find<T>((string Word, T Value)[] words, string word)
        where T : struct
    {
        foreach ((string known, T value) in words)
            if (known.Equals(word, StringComparison.OrdinalIgnoreCase))
                return value;
        return null;
    }
}
