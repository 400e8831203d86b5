using System.Globalization;

namespace CalibGeom.Verification.Uncertainty;

/// <summary>
/// One input quantity of a measurement: its estimate, standard uncertainty, degrees of freedom and distribution.
/// Immutable. Factories follow JCGM 101, table 1, and JCGM 100, 4.2 and 4.3.
/// </summary>
public sealed record InputQuantity
{
    private InputQuantity(
        string name,
        double value,
        double u,
        double degreesOfFreedom,
        Evaluation evaluation,
        InputShape shape
    )
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        if (!double.IsFinite(value))
            throw Bad(nameof(value), value, "it must be finite");
        if (!(u >= 0 && double.IsFinite(u)))
            throw Bad(nameof(u), u, "an uncertainty is finite and not negative");
        if (!(degreesOfFreedom > 0))
            throw Bad(nameof(degreesOfFreedom), degreesOfFreedom, "degrees of freedom are over 0");
        Name = name;
        Value = value;
        StandardUncertainty = u;
        DegreesOfFreedom = degreesOfFreedom;
        Evaluation = evaluation;
        Shape = shape;
    }

    /// <summary>What it is.</summary>
    public string Name { get; }

    /// <summary>The best estimate.</summary>
    public double Value { get; }

    /// <summary>
    /// The standard uncertainty as JCGM 100 has it; for Student's t the scale, not the standard deviation.
    /// </summary>
    public double StandardUncertainty { get; }

    /// <summary>Degrees of freedom of the standard uncertainty; infinite when it is taken as known.</summary>
    public double DegreesOfFreedom { get; }

    /// <summary>Type A or B.</summary>
    public Evaluation Evaluation { get; }

    /// <summary>The distribution Monte Carlo draws from.</summary>
    public InputShape Shape { get; }

    private double HalfWidth { get; init; }

    private double Inner { get; init; }

    /// <summary>A Gaussian quantity.</summary>
    /// <param name="name">What it is.</param>
    /// <param name="value">The estimate.</param>
    /// <param name="u">Standard uncertainty, not negative.</param>
    /// <param name="degreesOfFreedom">Degrees of freedom of <paramref name="u"/>, over 0.</param>
    /// <param name="evaluation">Type A or B; B by default.</param>
    /// <exception cref="ArgumentException">A value is out of range.</exception>
    public static InputQuantity Normal(
        string name,
        double value,
        double u,
        double degreesOfFreedom = double.PositiveInfinity,
        Evaluation evaluation = Evaluation.B
    ) => new(name, value, u, degreesOfFreedom, evaluation, InputShape.Normal);

    /// <summary>A quantity with a scaled and shifted t-distribution.</summary>
    /// <param name="name">What it is.</param>
    /// <param name="value">The estimate.</param>
    /// <param name="scale">The scale, not negative.</param>
    /// <param name="degreesOfFreedom">Degrees of freedom, over 0.</param>
    /// <param name="evaluation">Type A or B; A by default.</param>
    /// <exception cref="ArgumentException">A value is out of range.</exception>
    public static InputQuantity Student(
        string name,
        double value,
        double scale,
        double degreesOfFreedom,
        Evaluation evaluation = Evaluation.A
    ) => new(name, value, scale, degreesOfFreedom, evaluation, InputShape.Student);

    /// <summary>The mean of independent repeated observations (type A; JCGM 100, 4.2.3).</summary>
    /// <param name="name">What it is.</param>
    /// <param name="observations">At least two observations.</param>
    /// <exception cref="ArgumentException">There are fewer than two observations.</exception>
    public static InputQuantity Of(string name, IReadOnlyList<double> observations)
    {
        SampleStatistics s = SampleStatistics.Of(observations);
        if (s.Count < 2)
            throw new ArgumentException("observations holds fewer than two values.", nameof(observations));
        return Student(name, s.Mean, s.StandardErrorOfMean, s.Count - 1);
    }

    /// <summary>A rectangular quantity: value plus or minus a limit.</summary>
    /// <param name="name">What it is.</param>
    /// <param name="value">The middle.</param>
    /// <param name="halfWidth">The limit, not negative.</param>
    /// <param name="degreesOfFreedom">Degrees of freedom, for a limit that is not known exactly (JCGM 100,
    /// G.4.2).</param>
    /// <exception cref="ArgumentException">A value is out of range.</exception>
    public static InputQuantity Rectangular(
        string name,
        double value,
        double halfWidth,
        double degreesOfFreedom = double.PositiveInfinity
    ) =>
        new(name, value, halfWidth / Math.Sqrt(3), degreesOfFreedom, Evaluation.B, InputShape.Rectangular)
        {
            HalfWidth = halfWidth,
        };

    /// <summary>A triangular quantity.</summary>
    /// <param name="name">What it is.</param>
    /// <param name="value">The middle.</param>
    /// <param name="halfWidth">The limit, not negative.</param>
    /// <exception cref="ArgumentException">A value is out of range.</exception>
    public static InputQuantity Triangular(string name, double value, double halfWidth) =>
        new(name, value, halfWidth / Math.Sqrt(6), double.PositiveInfinity, Evaluation.B, InputShape.Triangular)
        {
            HalfWidth = halfWidth,
        };

    /// <summary>A U-shaped quantity: a sine of known amplitude at an unknown phase.</summary>
    /// <param name="name">What it is.</param>
    /// <param name="value">The middle.</param>
    /// <param name="halfWidth">The amplitude, not negative.</param>
    /// <exception cref="ArgumentException">A value is out of range.</exception>
    public static InputQuantity Arcsine(string name, double value, double halfWidth) =>
        new(name, value, halfWidth / Math.Sqrt(2), double.PositiveInfinity, Evaluation.B, InputShape.Arcsine)
        {
            HalfWidth = halfWidth,
        };

    /// <summary>A symmetric trapezoid.</summary>
    /// <param name="name">What it is.</param>
    /// <param name="value">The middle.</param>
    /// <param name="halfWidth">Half the base, not negative.</param>
    /// <param name="beta">Top over base, 0 (triangle) to 1 (rectangle).</param>
    /// <exception cref="ArgumentException">A value is out of range.</exception>
    public static InputQuantity Trapezoidal(string name, double value, double halfWidth, double beta)
    {
        if (beta is not (>= 0 and <= 1))
            throw Bad(nameof(beta), beta, "it runs from 0 to 1");
        double u = halfWidth * Math.Sqrt((1 + beta * beta) / 6);
        return new InputQuantity(name, value, u, double.PositiveInfinity, Evaluation.B, InputShape.Trapezoidal)
        {
            HalfWidth = halfWidth,
            Inner = beta,
        };
    }

    /// <summary>A rectangle whose limits are known only to within <paramref name="slack"/> (JCGM 101, 6.4.3).</summary>
    /// <param name="name">What it is.</param>
    /// <param name="value">The middle.</param>
    /// <param name="halfWidth">The limit, not negative.</param>
    /// <param name="slack">How far the limit may be off, 0 to <paramref name="halfWidth"/>.</param>
    /// <param name="degreesOfFreedom">Degrees of freedom for the first-order route.</param>
    /// <exception cref="ArgumentException">A value is out of range.</exception>
    public static InputQuantity CurvilinearTrapezoid(
        string name,
        double value,
        double halfWidth,
        double slack,
        double degreesOfFreedom = double.PositiveInfinity
    )
    {
        if (!(slack >= 0 && slack <= halfWidth))
            throw Bad(nameof(slack), slack, "it runs from 0 to the half width");
        double u = Math.Sqrt(halfWidth * halfWidth / 3 + slack * slack / 9);
        return new InputQuantity(name, value, u, degreesOfFreedom, Evaluation.B, InputShape.CurvilinearTrapezoid)
        {
            HalfWidth = halfWidth,
            Inner = slack,
        };
    }

    /// <summary>Draws one value (JCGM 101, 6.4).</summary>
    internal double Draw(SeededRandom random) =>
        Value
        + Shape switch
        {
            InputShape.Normal => StandardUncertainty * random.Normal(),
            InputShape.Student => StandardUncertainty * random.Student(DegreesOfFreedom),
            InputShape.Rectangular => random.Uniform(-HalfWidth, HalfWidth),
            InputShape.Triangular => HalfWidth * (random.Uniform() + random.Uniform() - 1),
            InputShape.Trapezoidal => HalfWidth
                * ((1 + Inner) * (random.Uniform() - 0.5) + (1 - Inner) * (random.Uniform() - 0.5)),
            InputShape.CurvilinearTrapezoid => (HalfWidth + Inner * (2 * random.Uniform() - 1))
                * (2 * random.Uniform() - 1),
            _ => HalfWidth * Math.Sin(2 * Math.PI * random.Uniform()),
        };

    private static ArgumentException Bad(string name, double value, string limit) =>
        new(string.Create(CultureInfo.InvariantCulture, $"{name} is {value}; {limit}."), name);
}
