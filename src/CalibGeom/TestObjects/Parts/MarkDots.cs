using CalibGeom.Planar;
using CalibGeom.Solids;

namespace CalibGeom.TestObjects.Parts;

/// <summary>Small raised dots, as many as the mark says: loose boxes from several trials look alike.</summary>
internal static class MarkDots
{
    /// <summary>The most dots that a rim has room for.</summary>
    internal const int Most = 6;

    /// <summary>
    /// Diameter, height and distance from dot to dot, mm: seen and felt with a nail, far apart enough to be counted.
    /// </summary>
    internal const double Diameter = 0.5,
        Height = 0.3,
        Pitch = 0.85;

    /// <summary>What a dot leaves free of a narrow face, as a share of it.</summary>
    private const double Share = 0.7;

    /// <summary>A row of dots along x about a point of the part's frame, on a face of some width.</summary>
    internal static IEnumerable<Loft> Along(PartPlace place, double x, double y, double baseZ, double width)
    {
        double diameter = Math.Min(Diameter, Share * width);
        for (int i = 0; i < place.Mark; i++)
        {
            Meshes.Vector3D p = place.Point(x + (i - (place.Mark - 1) / 2.0) * Pitch, y, 0);
            yield return Loft.Prism(Outline.Circle(p.X, p.Y, diameter), baseZ, Grid.Snap(baseZ + Height));
        }
    }
}
