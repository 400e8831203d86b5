using CalibGeom.Formats;

namespace CalibGeom.Plates;

/// <summary>The shadow of all parts below a ceiling: exact triangles while they are few, else the conservative raster.</summary>
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
    internal static PlateShadow Of(Plate plate, IReadOnlyList<PlatePart> parts, double ceiling, bool exact)
    {
        var raster = new ShadowRaster(plate);
        var triangles = new List<double>();
        foreach (PlatePart part in parts)
            FacetPipeline.Run(part, facets =>
            {
                if (exact) Append(facets, ceiling, triangles);
            }, () => facets => raster.Mark(facets, ceiling));
        return new PlateShadow(new PlanarTree(exact ? triangles.ToArray() : raster.ToTriangles()), raster);
    }

    private static void Append(ReadOnlySpan<StlFacet> facets, double ceiling, List<double> triangles)
    {
        foreach (ref readonly StlFacet facet in facets) FacetFlattener.Append(in facet, ceiling, triangles);
    }
}
