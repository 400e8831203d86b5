namespace CalibGeom.Verification.Tuning;

/// <summary>What the person wants and how far one step may go. Immutable.</summary>
public sealed record TuneOptions
{
    /// <summary>The defaults.</summary>
    public static TuneOptions Default { get; } = new();

    /// <summary>
    /// Wanted clearance per side in mm in the first joint; other joints keep their designed distance from it. Null
    /// (default): each joint as designed.
    /// </summary>
    public double? Target { get; init; }

    /// <summary>How far a clearance may lie from its target and count as on target, mm. Default 0.012.</summary>
    public double Tolerance { get; init; } = 0.012;

    /// <summary>The probability of being on target at which to stop. Default 0.8.</summary>
    public double Probability { get; init; } = 0.8;

    /// <summary>A further second of rest is worth while it gains this much, mm. Default 0.002.</summary>
    public double RestGain { get; init; } = 0.002;

    /// <summary>Rest goes on while the probability of that gain is above this. Default 0.1.</summary>
    public double RestDoubt { get; init; } = 0.1;

    /// <summary>The least relative change of exposure in one step. Default 0.08.</summary>
    public double LeastStep { get; init; } = 0.08;

    /// <summary>The greatest relative increase of exposure in one step. Default 0.25.</summary>
    public double MostUp { get; init; } = 0.25;

    /// <summary>The greatest relative decrease of exposure in one step. Default 0.20.</summary>
    public double MostDown { get; init; } = 0.20;

    /// <summary>The greatest increase of rest in one step, s. Default 1.5.</summary>
    public double MostRestStep { get; init; } = 1.5;

    /// <summary>The longest rest, s. Default 6.</summary>
    public double MostRest { get; init; } = 6;

    /// <summary>
    /// The probability with which the exposure should be at least the one that holds the target without an edge offset:
    /// missing light costs
    /// columns, light too much is taken back by the edge offset. Default 0.85; 0.5 aims at the middle.
    /// </summary>
    public double LightMargin { get; init; } = 0.85;

    /// <summary>
    /// The greatest print-through in mm that more exposure may lead to; slots up to this height may close. Default
    /// 0.40.
    /// </summary>
    public double MostPrintThrough { get; init; } = 0.40;

    /// <summary>
    /// The height in mm at which print time is priced: that of a production part, not of the coupon. Default 60.
    /// </summary>
    public double ProductionHeight { get; init; } = 60;

    /// <summary>What is believed before any print.</summary>
    public ExposurePriors Priors { get; init; } = ExposurePriors.Default;

    /// <summary>The thinnest column the person needs in mm, or null.</summary>
    public double? WantedColumn { get; init; }

    /// <summary>
    /// Young's modulus of the resin as printed in MPa, or null; with it buckling and bending loads are told for
    /// comparison.
    /// </summary>
    public double? Modulus { get; init; }

    /// <summary>Height of the columns in mm, for those loads. Default 6.3.</summary>
    public double ColumnHeight { get; init; } = 6.3;

    internal void Check()
    {
        if (Modulus is { } modulus)
            Require.Positive(modulus, 100000, "modulus", "MPa", nameof(Modulus));
        Require.Positive(ColumnHeight, 500, "column height", "mm", nameof(ColumnHeight));
        if (Target is { } target)
            Require.Within(target, -1, 2, "target clearance", "mm", nameof(Target));
        if (WantedColumn is { } column)
            Require.Positive(column, 20, "wanted column", "mm", nameof(WantedColumn));
        Require.Positive(Tolerance, 1, "tolerance", "mm", nameof(Tolerance));
        Require.Within(Probability, 0.5, 0.999, "probability", "", nameof(Probability));
        Require.Positive(RestGain, 1, "gain of rest", "mm", nameof(RestGain));
        Require.Within(RestDoubt, 0.01, 0.99, "doubt about rest", "", nameof(RestDoubt));
        Require.Within(LeastStep, 0, 0.5, "least step", "", nameof(LeastStep));
        Require.Within(MostUp, LeastStep, 2, "greatest increase", "", nameof(MostUp));
        Require.Within(MostDown, LeastStep, 0.9, "greatest decrease", "", nameof(MostDown));
        Require.Within(MostRestStep, 0, 60, "greatest step of rest", "s", nameof(MostRestStep));
        Require.Within(MostRest, 0, 60, "longest rest", "s", nameof(MostRest));
        Require.Within(LightMargin, 0.5, 0.99, "light margin", "", nameof(LightMargin));
        Require.Positive(MostPrintThrough, 20, "greatest print-through", "mm", nameof(MostPrintThrough));
        Require.Positive(ProductionHeight, 1000, "production height", "mm", nameof(ProductionHeight));
        Priors.Check();
    }
}
