using CalibGeom.Formats.Stl;
using CalibGeom.Meshes;

namespace CalibGeom.Formats;

/// <summary>Gathers facets into a welded mesh.</summary>
internal sealed class FacetMesh(int expectedFacets)
{
    // A closed body has half as many vertices as facets and two more.
    private readonly VertexWelder welder = new(expectedFacets / 2 + 64);
    private int[] triangles = new int[3 * Math.Max(expectedFacets, 16)];
    private int count;

    internal void Add(ReadOnlySpan<StlFacet> facets)
    {
        Reserve(3 * facets.Length);
        welder.Bound = welder.Count + 3L * Math.Max(0, expectedFacets - count / 3);
        int[] indices = triangles;
        int at = count;
        foreach (ref readonly StlFacet facet in facets)
        {
            indices[at] = welder.Add(facet.AX, facet.AY, facet.AZ);
            indices[at + 1] = welder.Add(facet.BX, facet.BY, facet.BZ);
            indices[at + 2] = welder.Add(facet.CX, facet.CY, facet.CZ);
            at += 3;
        }
        count = at;
    }

    internal TriangleMesh ToMesh()
    {
        if (triangles.Length != count)
            Array.Resize(ref triangles, count);
        return welder.ToMesh(triangles);
    }

    private void Reserve(int more)
    {
        if (count + (long)more > triangles.Length)
            Array.Resize(
                ref triangles,
                (int)Math.Min(Math.Max(2L * triangles.Length, count + (long)more), Array.MaxLength)
            );
    }
}
