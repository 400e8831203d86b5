namespace CalibGeom.TestObjects.Rules;

/// <summary>
/// Strength of a round bar: A = pi d^2 / 4, W = pi d^3 / 32, bending stress M / W (any textbook on strength of
/// materials).
/// </summary>
internal static class RoundBar
{
    /// <summary>Section area, mm2.</summary>
    internal static double Area(double diameter) => Math.PI * diameter * diameter / 4;

    /// <summary>Section modulus, mm3.</summary>
    internal static double SectionModulus(double diameter) => Math.PI * diameter * diameter * diameter / 32;

    /// <summary>Bending stress at the root of a bar, MPa.</summary>
    /// <param name="force">Across its free end, N.</param>
    /// <param name="length">mm.</param>
    /// <param name="diameter">mm.</param>
    internal static double BendingStress(double force, double length, double diameter) =>
        force * length / SectionModulus(diameter);
}
