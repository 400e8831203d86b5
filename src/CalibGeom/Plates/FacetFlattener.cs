using CalibGeom.Formats.Stl;

namespace CalibGeom.Plates;

/// <summary>The shadow of a facet, or of the part of it below a ceiling, as triangles of the plane.</summary>
internal static class FacetFlattener
{
    /// <summary>Writes the corners of the shadow into a span for ten numbers.</summary>
    /// <returns>The number of corners: 0, 3, 4.</returns>
    internal static int Flatten(ref readonly StlFacet f, double ceiling, Span<double> corners)
    {
        bool a = f.AZ < ceiling,
            b = f.BZ < ceiling,
            c = f.CZ < ceiling;
        if (a && b && c)
        {
            (corners[0], corners[1], corners[2], corners[3], corners[4], corners[5]) = (
                f.AX,
                f.AY,
                f.BX,
                f.BY,
                f.CX,
                f.CY
            );
            return 3;
        }
        if (!a && !b && !c)
            return 0;
        int count = 0;
        Edge(f.AX, f.AY, f.AZ, f.BX, f.BY, f.BZ, ceiling, corners, ref count);
        Edge(f.BX, f.BY, f.BZ, f.CX, f.CY, f.CZ, ceiling, corners, ref count);
        Edge(f.CX, f.CY, f.CZ, f.AX, f.AY, f.AZ, ceiling, corners, ref count);
        return count;
    }

    /// <summary>Appends the shadow as triangles of six numbers.</summary>
    internal static void Append(ref readonly StlFacet f, double ceiling, List<double> triangles)
    {
        Span<double> corners = stackalloc double[10];
        int count = Flatten(in f, ceiling, corners);
        for (int i = 2; i < count; i++)
            triangles.AddRange([
                corners[0],
                corners[1],
                corners[2 * i - 2],
                corners[2 * i - 1],
                corners[2 * i],
                corners[2 * i + 1],
            ]);
    }

    private static void Edge(
        double ax,
        double ay,
        double az,
        double bx,
        double by,
        double bz,
        double ceiling,
        Span<double> corners,
        ref int count
    )
    {
        if (az < ceiling)
            Add(ax, ay, corners, ref count);
        if (az < ceiling == bz < ceiling)
            return;
        double t = (ceiling - az) / (bz - az);
        Add(ax + t * (bx - ax), ay + t * (by - ay), corners, ref count);
    }

    private static void Add(double x, double y, Span<double> corners, ref int count)
    {
        (corners[2 * count], corners[2 * count + 1]) = (x, y);
        count++;
    }
}
