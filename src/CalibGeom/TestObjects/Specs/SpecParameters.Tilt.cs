namespace CalibGeom.TestObjects.Specs;

/// <content>The parameters of <see cref="TiltSpec"/>.</content>
internal static partial class SpecParameters
{
    internal static readonly SpecParameter TiltAxis = new("tilt", "axis", SpecKind.Word)
    {
        Words = ["x", "y"],
        Meaning = "the level axis that the object turns about, by the right-hand rule",
        Why = "X: the long side of the plinth stays level.",
    };

    internal static readonly SpecParameter TiltAngle = new("tilt", "angle", SpecKind.Number)
    {
        Unit = "deg",
        Minimum = -45,
        Maximum = 45,
        Meaning = "angle of the tilt; 0 stands level without a wedge",
        Why = "Level: the pixel grid is the plainest reference.",
    };
}
