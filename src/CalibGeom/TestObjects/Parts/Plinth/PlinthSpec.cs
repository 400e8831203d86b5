using System.Globalization;

namespace CalibGeom.TestObjects.Parts.Plinth;

/// <summary>
/// The rounded plate that everything stands on. Immutable; every value is checked when it is set, so that a spec that
/// exists is in range. Compares by value.
/// </summary>
public sealed record PlinthSpec
{
    /// <summary>Thickness, measured at the flat pad. Range 1 to 10 mm. Default 2.5 mm.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Out of range, or not a number.</exception>
    public double Thickness
    {
        get;
        init => field = PlinthParameters.Thickness.Require(value);
    } = 2.5;

    /// <summary>
    /// Height and width of the chamfer around the bottom; 0 leaves it out. Range 0 to 5 mm. Default 0.8 mm.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Out of range, or not a number.</exception>
    public double EdgeChamfer
    {
        get;
        init => field = PlinthParameters.EdgeChamfer.Require(value);
    } = 0.8;

    /// <summary>What is wrong between two of the parameters, or null.</summary>
    internal string? Problem =>
        EdgeChamfer < Thickness
            ? null
            : string.Create(
                CultureInfo.InvariantCulture,
                $"plinth.edgeChamfer is {EdgeChamfer} mm; it must be less than plinth.thickness, {Thickness} mm."
            );
}
