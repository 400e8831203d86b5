namespace CalibGeom.Verification.Tests.Clearances.Bench;

/// <summary>What is wrong on a simulated bench beyond what the budget assumes. Lengths in mm.</summary>
internal sealed record BenchWorld(string Name)
{
    /// <summary>Repeats scatter with Student's t of 3 degrees of freedom (same scale) instead of a Gaussian.</summary>
    internal bool HeavyTails { get; init; }

    internal bool Rounded { get; init; }

    /// <summary>One face, any of them, is read wrong by this every time.</summary>
    internal double WrongFace { get; init; }

    /// <summary>One reading, any of them, is wrong by this.</summary>
    internal double WrongReading { get; init; }

    /// <summary>Corners of every box stand out by this; spans have no corners in the jaws' way.</summary>
    internal double Burr { get; init; }

    /// <summary>Standard deviation of what a bent face adds to one contact.</summary>
    internal double Warp { get; init; }

    /// <summary>The caliper's error swings by this along its scale, each jaw with a phase of its own.</summary>
    internal double Wave { get; init; }

    /// <summary>Share of faces that nobody read.</summary>
    internal double Missing { get; init; }

    /// <summary>Standard deviation of what a second person, who reads every other face, adds to each jaw.</summary>
    internal double SecondPerson { get; init; }

    /// <summary>Standard deviation of growth from print to print; the next print is asked for when above 0.</summary>
    internal double BetweenPrints { get; init; }

    /// <summary>How many prints are read.</summary>
    internal int Prints { get; init; } = 1;

    /// <summary>Standard deviation of what soft material gives under each jaw.</summary>
    internal double Give { get; init; }

    /// <summary>
    /// Whether an option or a line of the file can say what is wrong here; so can the row of the assumed case.
    /// </summary>
    internal bool HasDeclaration => BetweenPrints > 0 || Give > 0 || Name == All[0].Name;

    /// <summary>
    /// Which findings are loud about what is wrong here: that the model does not fit, that a reading is bad, or that
    /// the readings cannot know of just this.
    /// </summary>
    internal string[] Says =>
        [
            "model-does-not-fit",
            "gross-error",
            "repeat-odd",
            "direct-and-model-differ",
            .. Burr > 0 ? new[] { "burr-seen", "burr-or-growth" } : [],
            .. BetweenPrints > 0 ? new[] { "next-print-assumed" } : [],
        ];

    /// <summary>The rows of the table in docs/predict.md.</summary>
    internal static BenchWorld[] All { get; } =
    [
        new("as assumed"),
        new("scatter of heavy tails (t, 3 degrees of freedom)") { HeavyTails = true },
        new("rounded to 0.01") { Rounded = true },
        new("one face wrong by 0.05") { WrongFace = 0.05, Rounded = true },
        new("one face wrong by 0.10") { WrongFace = 0.10, Rounded = true },
        new("one reading wrong by 0.05") { WrongReading = 0.05, Rounded = true },
        new("burr of 0.01 on all boxes") { Burr = 0.01, Rounded = true },
        new("burr of 0.02 on all boxes") { Burr = 0.02, Rounded = true },
        new("warp of 0.005") { Warp = 0.005, Rounded = true },
        new("warp of 0.010") { Warp = 0.010, Rounded = true },
        new("warp of 0.015") { Warp = 0.015, Rounded = true },
        new("caliper swings +-0.005 along its scale") { Wave = 0.005, Rounded = true },
        new("caliper swings +-0.010 along its scale") { Wave = 0.010, Rounded = true },
        new("four faces in ten not read") { Missing = 0.4, Rounded = true },
        new("two persons") { SecondPerson = 0.006, Rounded = true },
        new("next print, 0.003 between prints") { BetweenPrints = 0.003, Rounded = true },
        new("next print, 0.012 between prints") { BetweenPrints = 0.012, Rounded = true },
        new("next print, 0.012 between, four prints read")
        {
            BetweenPrints = 0.012,
            Prints = 4,
            Rounded = true,
        },
        new("soft part") { Give = 0.02, Rounded = true },
    ];
}
