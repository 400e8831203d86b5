namespace CalibGeom.Verification.Tuning;

/// <summary>
/// What a round column carries while a layer is pulled off the film, for comparison: strengths of green resin have no
/// usable published table. Formulas: axial stress F / A; Euler's load pi^2 E I / (2 L)^2 (fixed foot, free head);
/// bending stress 32 F L / (pi d^3). Newton, mm and MPa. Immutable.
/// </summary>
public sealed record ColumnLoads
{
    /// <summary>Loads of a column.</summary>
    /// <param name="diameter">Diameter in mm, above 0 and at most 20.</param>
    /// <param name="height">Height in mm, above 0 and at most 500.</param>
    /// <param name="headDiameter">Diameter of the head in mm, at least the column's, at most 50.</param>
    /// <param name="modulus">Young's modulus as printed in MPa, above 0 and at most 100000.</param>
    /// <exception cref="ArgumentException">A value is out of range.</exception>
    public ColumnLoads(double diameter, double height, double headDiameter, double modulus)
    {
        Diameter = Require.Positive(diameter, 20, "column diameter", "mm", nameof(diameter));
        Height = Require.Positive(height, 500, "column height", "mm", nameof(height));
        HeadDiameter = Require.Within(headDiameter, diameter, 50, "head diameter", "mm", nameof(headDiameter));
        Modulus = Require.Positive(modulus, 100000, "modulus", "MPa", nameof(modulus));
    }

    /// <summary>Diameter, mm.</summary>
    public double Diameter { get; }

    /// <summary>Height, mm.</summary>
    public double Height { get; }

    /// <summary>Diameter of the head, mm.</summary>
    public double HeadDiameter { get; }

    /// <summary>Young's modulus, MPa.</summary>
    public double Modulus { get; }

    /// <summary>Head area over column area.</summary>
    public double LoadRatio => HeadDiameter * HeadDiameter / (Diameter * Diameter);

    /// <summary>Second moment of area pi d^4 / 64, mm^4.</summary>
    public double SecondMoment => Math.PI * Math.Pow(Diameter, 4) / 64;

    /// <summary>The load in N under which it buckles, its foot fixed and its head free.</summary>
    public double BucklingLoad => Math.PI * Math.PI * Modulus * SecondMoment / (4 * Height * Height);

    /// <summary>The axial stress in MPa when the film holds the head with some pressure.</summary>
    /// <param name="peelPressure">Peel force over peeled area, MPa.</param>
    public double PeelStress(double peelPressure) => peelPressure * LoadRatio;

    /// <summary>The bending stress in MPa at the foot under a force across the head.</summary>
    /// <param name="force">Newton.</param>
    public double BendingStress(double force) => 32 * force * Height / (Math.PI * Math.Pow(Diameter, 3));
}
