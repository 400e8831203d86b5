using System.Runtime.InteropServices;
using CalibGeom.Formats;
using CalibGeom.Meshes;

namespace CalibGeom.Plates;

/// <summary>
/// Writes parts and coupons together and measures, from the very facets that are written, how far they stand apart.
/// </summary>
public static class PlateMerge
{
    /// <summary>Writes one binary STL: the facets of each part in order, byte for byte as they are, then those of each coupon. Takes constant
    /// memory however large the parts are.</summary>
    /// <param name="stream">Where to; written front to back, left open.</param>
    /// <param name="layout">Parts and coupons.</param>
    /// <param name="header">Text for the header; see <see cref="StlWriter.WritePreamble"/>.</param>
    /// <returns>The true least distance between a coupon and a part, mm.</returns>
    /// <exception cref="InputException">A part cannot be read, or there are more facets than an STL can count.</exception>
    /// <exception cref="IOException">Writing failed.</exception>
    public static double WriteStl(Stream stream, PlateLayout layout, string header)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(layout);
        TriangleMesh[] coupons = layout.Coupons.Select(c => c.ToMesh()).ToArray();
        long total = layout.Surveys.Sum(s => s.TriangleCount) + coupons.Sum(c => (long)c.TriangleCount);
        if (total > uint.MaxValue) throw new InputException($"Parts and coupons have {total} facets; an STL counts at most {uint.MaxValue}. Write the coupon alone.");
        StlWriter.WritePreamble(stream, (uint)total, header);
        var proof = new DistanceProof(coupons);
        foreach (PlatePart part in layout.Parts)
            proof.Pass(part, facets => stream.Write(MemoryMarshal.AsBytes(facets)));
        foreach (TriangleMesh coupon in coupons)
            PlatePart.FromMesh("coupon", coupon).Visit(facets => stream.Write(MemoryMarshal.AsBytes(facets)));
        return proof.Distance;
    }

    /// <summary>Measures without writing.</summary>
    /// <param name="layout">Parts and coupons.</param>
    /// <returns>The true least distance between a coupon and a part, mm; infinite without coupons.</returns>
    /// <exception cref="InputException">A part cannot be read.</exception>
    public static double Measure(PlateLayout layout)
    {
        ArgumentNullException.ThrowIfNull(layout);
        var proof = new DistanceProof(layout.Coupons.Select(c => c.ToMesh()));
        foreach (PlatePart part in layout.Parts) proof.Pass(part, _ => { });
        return proof.Distance;
    }
}
