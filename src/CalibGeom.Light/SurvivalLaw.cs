namespace CalibGeom.Light;

/// <summary>
/// The chance that a thin column comes off the plate whole, as a logistic law: the logit is slope times ln(d / limit) +
/// m ln(D / (3 Ec)) - w ln(load ratio / 16), with diameter d, dose D on the column's axis and load ratio head area over
/// column area. An assumption for trying things out without a printer; no source. Immutable.
/// </summary>
public sealed record SurvivalLaw
{
    /// <summary>A law.</summary>
    /// <param name="limit">The diameter in mm of which half print at a dose of 3 Ec and a load ratio of 16, above 0 and
    /// at most 10. Default 0.40.</param>
    /// <param name="slope">How sharply survival turns with ln(diameter), above 0 and at most 1000. Default 10.</param>
    /// <param name="doseExponent">m, 0 to 10. Default 0.5.</param>
    /// <param name="loadExponent">w, 0 to 10. Default 0.25.</param>
    /// <exception cref="ArgumentException">A value is out of range.</exception>
    public SurvivalLaw(double limit = 0.40, double slope = 10, double doseExponent = 0.5, double loadExponent = 0.25)
    {
        Limit = Require.Positive(limit, 10, "column limit", "mm", nameof(limit));
        Slope = Require.Positive(slope, 1000, "slope", "", nameof(slope));
        DoseExponent = Require.Within(doseExponent, 0, 10, "dose exponent", "", nameof(doseExponent));
        LoadExponent = Require.Within(loadExponent, 0, 10, "load exponent", "", nameof(loadExponent));
    }

    /// <summary>The diameter in mm of which half print at a dose of 3 Ec and a load ratio of 16.</summary>
    public double Limit { get; }

    /// <summary>How sharply survival turns with ln(diameter).</summary>
    public double Slope { get; }

    /// <summary>m: how much dose counts beside diameter.</summary>
    public double DoseExponent { get; }

    /// <summary>w: how much load ratio counts beside diameter.</summary>
    public double LoadExponent { get; }

    /// <summary>The chance that a column prints, with the dose on the axis of an upright one.</summary>
    /// <param name="blur">The blur.</param>
    /// <param name="diameter">The column's diameter in mm, above 0.</param>
    /// <param name="ratio">The dose in a wide lit area over the critical dose, above 0.</param>
    /// <param name="headDiameter">The head's diameter in mm; the column's own where there is none.</param>
    public double Chance(EdgeBlur blur, double diameter, double ratio, double headDiameter) =>
        Chance(new DiscMask(blur, diameter).AxisShare * ratio, diameter, headDiameter);

    /// <summary>The chance that a column prints; 0 where its axis does not reach the critical dose.</summary>
    /// <param name="axisRatio">The dose on the column's axis over the critical dose.</param>
    /// <param name="diameter">The column's diameter in mm, above 0.</param>
    /// <param name="headDiameter">The head's diameter in mm; the column's own where there is none.</param>
    public double Chance(double axisRatio, double diameter, double headDiameter)
    {
        if (axisRatio <= 1)
            return 0;
        double load = Math.Max(1, headDiameter * headDiameter / (diameter * diameter));
        double logit =
            Slope
            * (
                Math.Log(diameter / Limit) + DoseExponent * Math.Log(axisRatio / 3) - LoadExponent * Math.Log(load / 16)
            );
        return 1 / (1 + Math.Exp(-logit));
    }
}
