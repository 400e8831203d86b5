using System.Collections.Concurrent;
using CalibGeom.Formats.Stl;

namespace CalibGeom.Plates;

/// <summary>
/// The shadow of all parts below a ceiling: exact triangles while they are few, else the conservative raster.
/// </summary>
internal sealed class PlateShadow
{
    private PlateShadow(PlanarTriangles tree, ShadowRaster raster) => (Tree, Raster) = (tree, raster);

    /// <summary>What coupons keep away from.</summary>
    internal PlanarTriangles Tree { get; }

    /// <summary>The same as cells, for pictures.</summary>
    internal ShadowRaster Raster { get; }

    /// <summary>A shadow from one look through the parts.</summary>
    /// <param name="plate">The plate.</param>
    /// <param name="parts">The parts.</param>
    /// <param name="ceiling">Only what lies lower counts, mm; infinite for the whole shadow.</param>
    /// <param name="exact">Whether to keep every triangle.</param>
    /// <param name="cancellation">Stops the look.</param>
    internal static PlateShadow Of(
        Plate plate,
        IReadOnlyList<PlatePart> parts,
        double ceiling,
        bool exact,
        CancellationToken cancellation
    ) => Of(plate, parts, ceiling, exact, _ => _ => { }, null, cancellation);

    /// <summary>The whole shadow and what else there is to know, from one look through the parts.</summary>
    internal static (PlateShadow Shadow, PartSurvey[] Surveys) Survey(
        Plate plate,
        IReadOnlyList<PlatePart> parts,
        bool exact,
        IProgress<double>? progress,
        CancellationToken cancellation
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
            },
            progress,
            cancellation
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
        Func<PlatePart, FacetVisitor> also,
        IProgress<double>? progress,
        CancellationToken cancellation
    )
    {
        double total = Math.Max(1, parts.Sum(p => (double)p.TriangleCount));
        long seen = 0;
        var raster = new ShadowRaster(plate);
        var triangles = new List<double>();
        foreach (PlatePart part in parts)
            FacetPipeline.Run(
                part,
                facets =>
                {
                    cancellation.ThrowIfCancellationRequested();
                    if (exact)
                        Append(facets, ceiling, triangles);
                    seen += facets.Length;
                    progress?.Report(Math.Min(1, seen / total));
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
        return new PlateShadow(new PlanarTriangles(exact ? Once(triangles) : raster.ToTriangles()), raster);
    }

    /// <summary>
    /// Each triangle once: no tree parts copies of one, such as doubled facets or the two sides of a sheet, and every
    /// question would look at all of them.
    /// </summary>
    private static double[] Once(List<double> triangles)
    {
        var seen = new HashSet<(double, double, double, double, double, double)>();
        var once = new List<double>(triangles.Count);
        (double X, double Y)[] corners = new (double, double)[3];
        for (int t = 0; t < triangles.Count; t += 6)
        {
            for (int i = 0; i < 3; i++)
                corners[i] = (triangles[t + 2 * i], triangles[t + 2 * i + 1]);
            Array.Sort(corners);
            ((double x, double y), (double x2, double y2), (double x3, double y3)) = (
                corners[0],
                corners[1],
                corners[2]
            );
            if (seen.Add((x, y, x2, y2, x3, y3)))
                for (int i = t; i < t + 6; i++)
                    once.Add(triangles[i]);
        }
        return [.. once];
    }

    private static void Append(ReadOnlySpan<StlFacet> facets, double ceiling, List<double> triangles)
    {
        foreach (ref readonly StlFacet facet in facets)
            FacetFlattener.Append(in facet, ceiling, triangles);
    }
}
