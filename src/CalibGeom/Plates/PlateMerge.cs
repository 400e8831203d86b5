using System.Runtime.InteropServices;
using CalibGeom.Features.Files;
using CalibGeom.Formats;
using CalibGeom.Formats.Stl;
using CalibGeom.Formats.ThreeMf;
using CalibGeom.Meshes;

namespace CalibGeom.Plates;

/// <summary>
/// Writes parts and coupons together and measures, from the very facets that are written, how far they stand apart.
/// </summary>
public static class PlateMerge
{
    // mm; far below what any printer or the grid resolves.
    private const double Rounding = 1e-6;

    /// <summary>
    /// Writes one binary STL: the facets of each part in order, byte for byte as they are, then those of each coupon.
    /// Takes constant memory however large the parts are.
    /// </summary>
    /// <param name="stream">Where to; written front to back, left open.</param>
    /// <param name="layout">Parts and coupons.</param>
    /// <param name="header">Text for the header; see <see cref="StlWriter.WritePreamble"/>.</param>
    /// <returns>The true least distance between a coupon and a part, mm; at least the gap.</returns>
    /// <exception cref="InputException">A part cannot be read, there are more facets than an STL can count, or a coupon
    /// stands nearer to a part than the gap; what was written is then of no use.</exception>
    /// <exception cref="IOException">Writing failed.</exception>
    /// <exception cref="OperationCanceledException">The layout's token stopped it.</exception>
    public static double WriteStl(Stream stream, PlateLayout layout, string header)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(layout);
        TriangleMesh[] coupons = layout.Coupons.Select(c => c.ToMesh()).ToArray();
        long total = layout.Surveys.Sum(s => s.TriangleCount) + coupons.Sum(c => (long)c.TriangleCount);
        if (total > uint.MaxValue)
            throw new InputException(
                InputIds.Plate,
                $"Parts and coupons have {total} facets; an STL counts at most {uint.MaxValue}. Write the coupon alone."
            );
        StlWriter.WritePreamble(stream, (uint)total, header);
        var proof = new DistanceProof(coupons);
        foreach (PlatePart part in layout.Parts)
            proof.Pass(
                part,
                facets =>
                {
                    layout.Cancellation.ThrowIfCancellationRequested();
                    stream.Write(MemoryMarshal.AsBytes(facets));
                }
            );
        foreach (TriangleMesh coupon in coupons)
            WriteFacets(stream, coupon, layout.Cancellation);
        return Required(layout, proof.Distance);
    }

    /// <summary>Writes the coupons alone as one binary STL, in plate coordinates.</summary>
    /// <param name="stream">Where to; written front to back, left open.</param>
    /// <param name="layout">Parts and coupons.</param>
    /// <param name="header">Text for the header.</param>
    /// <returns>The true least distance between a coupon and a part, mm; at least the gap.</returns>
    /// <exception cref="InputException">A part cannot be read, or a coupon stands nearer to a part than the gap; what
    /// was written is then of no use.</exception>
    /// <exception cref="IOException">Writing failed.</exception>
    /// <exception cref="OperationCanceledException">The layout's token stopped it.</exception>
    public static double WriteCouponsStl(Stream stream, PlateLayout layout, string header)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(layout);
        TriangleMesh[] coupons = layout.Coupons.Select(c => c.ToMesh()).ToArray();
        StlWriter.WritePreamble(stream, (uint)coupons.Sum(c => c.TriangleCount), header);
        foreach (TriangleMesh coupon in coupons)
            WriteFacets(stream, coupon, layout.Cancellation);
        return Required(layout, LeastDistance(layout));
    }

    /// <summary>
    /// Writes one 3MF with a named object for each part and each coupon; a coupon is kept in its own coordinates and
    /// placed by the transform of its build item. Takes memory in proportion to the parts.
    /// </summary>
    /// <param name="stream">Where to; written front to back, left open.</param>
    /// <param name="layout">Parts and coupons.</param>
    /// <param name="content">Title and application.</param>
    /// <param name="withParts">Whether the parts are written; otherwise the coupons alone.</param>
    /// <returns>The true least distance between a coupon and a part, mm; at least the gap.</returns>
    /// <exception cref="InputException">A part cannot be read, or a coupon stands nearer to a part than the gap; what
    /// was written is then of no use.</exception>
    /// <exception cref="IOException">Writing failed.</exception>
    /// <exception cref="OperationCanceledException">The layout's token stopped it.</exception>
    public static double WriteThreeMf(Stream stream, PlateLayout layout, ThreeMfContent content, bool withParts = true)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(layout);
        var objects = new List<MeshObject>();
        if (withParts)
            objects.AddRange(
                layout.Parts.Select(p => new MeshObject(Path.GetFileNameWithoutExtension(p.Name), p.ToMesh()))
            );
        objects.AddRange(layout.Coupons.Select(c => new MeshObject(c.Name, c.Coupon.Mesh) { Transform = c.Transform }));
        using var stopping = new StoppingStream(stream, layout.Cancellation);
        ThreeMfWriter.Write(stopping, objects, content);
        return Required(layout, LeastDistance(layout));
    }

    /// <summary>Measures without writing.</summary>
    /// <param name="layout">Parts and coupons.</param>
    /// <returns>The true least distance between a coupon and a part, mm; infinite without coupons.</returns>
    /// <exception cref="InputException">A part cannot be read.</exception>
    public static double LeastDistance(PlateLayout layout)
    {
        ArgumentNullException.ThrowIfNull(layout);
        var proof = new DistanceProof(layout.Coupons.Select(c => c.ToMesh()));
        foreach (PlatePart part in layout.Parts)
            proof.Pass(part, _ => layout.Cancellation.ThrowIfCancellationRequested());
        return proof.Distance;
    }

    /// <summary>
    /// Where coupons stand was found in the plane; what was written is measured in space, and must agree.
    /// </summary>
    private static double Required(PlateLayout layout, double distance) =>
        distance >= layout.Rules.Gap - Rounding
            ? distance
            : throw new InputException(
                InputIds.Plate,
                FormattableString.Invariant(
                    $"A coupon stands {distance:0.####} mm from a part, nearer than the gap of {layout.Rules.Gap} mm: "
                ) + "the file of a part has changed since the coupon was placed. Place it again."
            );

    private static void WriteFacets(Stream stream, TriangleMesh mesh, CancellationToken cancellation) =>
        PlatePart
            .Of("coupon", mesh)
            .Visit(facets =>
            {
                cancellation.ThrowIfCancellationRequested();
                stream.Write(MemoryMarshal.AsBytes(facets));
            });
}
