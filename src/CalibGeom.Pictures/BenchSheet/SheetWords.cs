namespace CalibGeom.Pictures.BenchSheet;

/// <summary>Words of the sheet: fits with their tests, stages of columns, settings.</summary>
internal static class SheetWords
{
    /// <summary>A felt fit and the small test that tells it.</summary>
    internal static readonly (string Word, string Test)[] Fits =
    [
        ("refuses", "will not seat under a firm thumb"),
        ("binds", "seats by push and stays when inverted"),
        ("slides", "seats by its weight or a finger's; a tap frees it"),
        ("rattles", "falls out, or rocks visibly"),
    ];

    /// <summary>The last stage at which a column stood, in the order in which taps go through them.</summary>
    internal static readonly (string Word, string Meaning)[] Stages =
    [
        ("lost", "lost while printing"),
        ("plate", "stood on the plate, lost in the wash"),
        ("wash", "stood after the wash, lost in drying or post-cure"),
        ("cure", "stood after post-cure"),
    ];

    /// <summary>Materials: the word of the readings file, and what it means.</summary>
    internal static readonly (string Word, string Meaning)[] Materials =
    [
        ("rigid", "rigid: no fingernail dents it"),
        ("flexible", "flexible: gives under the jaws"),
    ];

    /// <summary>States of the part: the word of the readings file, and what it means.</summary>
    internal static readonly (string Word, string Meaning)[] States =
    [
        ("washed", "washed"),
        ("dry", "washed and dry"),
        ("post-cured", "post-cured"),
    ];

    /// <summary>What the workshop knows of the print; written into the file as lines that begin with #.</summary>
    internal static readonly (string Word, string Label, bool Number)[] Settings =
    [
        ("trial", "Trial", false),
        ("date", "Date", false),
        ("printer", "Printer", false),
        ("resin", "Resin", false),
        ("layer", "Layer height, mm", true),
        ("exposure", "Exposure, s", true),
        ("rest", "Rest before exposure, s", true),
        ("offset", "Edge offset, mm", true),
    ];
}
