using CalibGeom.Formats.Stl;
using CalibGeom.Meshes;

namespace CalibGeom.Plates;

/// <summary>Gathers a <see cref="PartSurvey"/> block by block.</summary>
internal sealed class PartSurveyor
{
    private float minX = float.PositiveInfinity,
        minY = float.PositiveInfinity,
        minZ = float.PositiveInfinity;
    private float maxX = float.NegativeInfinity,
        maxY = float.NegativeInfinity,
        maxZ = float.NegativeInfinity;
    private EdgeTally edges;
    private long count;

    internal void Visit(ReadOnlySpan<StlFacet> facets)
    {
        foreach (ref readonly StlFacet f in facets)
        {
            minX = Math.Min(minX, Math.Min(f.AX, Math.Min(f.BX, f.CX)));
            minY = Math.Min(minY, Math.Min(f.AY, Math.Min(f.BY, f.CY)));
            minZ = Math.Min(minZ, Math.Min(f.AZ, Math.Min(f.BZ, f.CZ)));
            maxX = Math.Max(maxX, Math.Max(f.AX, Math.Max(f.BX, f.CX)));
            maxY = Math.Max(maxY, Math.Max(f.AY, Math.Max(f.BY, f.CY)));
            maxZ = Math.Max(maxZ, Math.Max(f.AZ, Math.Max(f.BZ, f.CZ)));
            edges.Add(in f);
        }
        count += facets.Length;
    }

    internal void Add(PartSurveyor other)
    {
        (minX, minY, minZ) = (Math.Min(minX, other.minX), Math.Min(minY, other.minY), Math.Min(minZ, other.minZ));
        (maxX, maxY, maxZ) = (Math.Max(maxX, other.maxX), Math.Max(maxY, other.maxY), Math.Max(maxZ, other.maxZ));
        edges.Add(other.edges);
        count += other.count;
    }

    internal PartSurvey Result(string name) =>
        new(name, count, new Box3D(new(minX, minY, minZ), new(maxX, maxY, maxZ)), edges.IsClosed);
}
