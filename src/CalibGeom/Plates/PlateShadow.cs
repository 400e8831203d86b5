using System.Collections.Concurrent;
using CalibGeom.Formats.Stl;

namespace CalibGeom.Plates;

/// <summary>
/// The shadow of all parts below a ceiling: exact triangles while they are few, else the conservative raster.
/// </summary>
internal sealed class PlateShadow
{
    private PlateShadow(PlanarTree tree, ShadowRaster raster) => (Tree, Raster) = (tree, raster);

    /// <summary>What coupons keep away from.</summary>
    internal PlanarTree Tree { get; }

    /// <summary>The same as cells, for pictures.</summary>
    internal ShadowRaster Raster { get; }

    /// <summary>A shadow from one look through the parts.</summary>
    /// <param name="plate">The plate.</param>
    /// <param name="parts">The parts.</param>
    /// <param name="ceiling">Only what lies lower counts, mm; infinite for the whole shadow.</param>
    /// <param name="exact">Whether to keep every triangle.</param>
    internal static PlateShadow Of(Plate plate, IReadOnlyList<PlatePart> parts, double ceiling, bool exact) =>
        Of(plate, parts, ceiling, exact, _ => _ => { });

    /// <summary>The whole shadow and what else there is to know, from one look through the parts.</summary>
    internal static (PlateShadow Shadow, PartSurvey[] Surveys) Survey(
        Plate plate,
        IReadOnlyList<PlatePart> parts,
        bool exact
    )
    {
        var surveyors = new ConcurrentBag<(PlatePart Part, PartSurveyor Surveyor)>();
        PlateShadow shadow = Of(
            plate,
            parts,
            double.PositiveInfinity,
            exact,
            part =>
            {
                var own = new PartSurveyor();
                surveyors.Add((part, own));
                return own.Visit;
            }
        );
        return (
            shadow,
            parts
                .Select(part =>
                {
                    var all = new PartSurveyor();
                    foreach ((_, PartSurveyor one) in surveyors.Where(s => ReferenceEquals(s.Part, part)))
                        all.Add(one);
                    return all.Result(part.Name);
                })
                .ToArray()
        );
    }

    private static PlateShadow Of(
        Plate plate,
        IReadOnlyList<PlatePart> parts,
        double ceiling,
        bool exact,
        Func<PlatePart, FacetVisitor> also
    )
    {
        var raster = new ShadowRaster(plate);
        var triangles = new List<double>();
        foreach (PlatePart part in parts)
            FacetPipeline.Run(
                part,
                facets =>
                {
                    if (exact)
                        Append(facets, ceiling, triangles);
                },
                () =>
                {
                    FacetVisitor more = also(part);
                    return facets =>
                    {
                        raster.Mark(facets, ceiling);
                        more(facets);
                    };
                }
            );
        return new PlateShadow(new PlanarTree(exact ? triangles.ToArray() : raster.ToTriangles()), raster);
    }

    private static void Append(ReadOnlySpan<StlFacet> facets, double ceiling, List<double> triangles)
    {
        foreach (ref readonly StlFacet facet in facets)
            FacetFlattener.Append(in facet, ceiling, triangles);
    }
}
