using CalibGeom.Planar;

namespace CalibGeom.TestObjects.Parts.Labels;

/// <summary>The raised arrow that points along +X.</summary>
internal static class DirectionArrow
{
    private const double Shaft = 0.4,
        Point = 0.45;

    /// <summary>The arrow about a centre.</summary>
    internal static Outline At(double x, double y)
    {
        double length = Proportions.ArrowLength / 2,
            half = Proportions.ArrowWidth / 2,
            shaft = half * Shaft,
            neck = length - Point * Proportions.ArrowLength;
        return Outline.FromMillimetres(
            (x - length, y - shaft),
            (x + neck, y - shaft),
            (x + neck, y - half),
            (x + length, y),
            (x + neck, y + half),
            (x + neck, y + shaft),
            (x - length, y + shaft)
        );
    }
}
