using CalibGeom.Planar;

namespace CalibGeom.TestObjects.Parts;

/// <summary>
/// An upright rectangle about the origin with three rounded corners and one (+X-Y) cut at 45 degrees. Outlines of any
/// two have the same vertices in the same order, so that a loft runs between them; flat faces are exactly parallel to
/// the axes.
/// </summary>
/// <param name="HalfX">Half the width along X, mm.</param>
/// <param name="HalfY">Half the width along Y, mm.</param>
/// <param name="Radius">Of the three corners, mm.</param>
/// <param name="Key">Legs of the cut corner, mm.</param>
internal readonly record struct KeyedSquare(double HalfX, double HalfY, double Radius, double Key)
{
    /// <summary>Vertices of one rounded corner: 7.5 degrees a segment.</summary>
    internal const int CornerVertices = 13;

    /// <summary>Vertices from the cut corner to the end of the +X+Y corner.</summary>
    internal const int EastVertices = 2 + CornerVertices;

    private static readonly double Diagonal = 2 - Math.Sqrt(2);

    /// <summary>The shape with every face moved outward (inward when negative) by the same distance.</summary>
    internal KeyedSquare Grow(double by) => new(HalfX + by, HalfY + by, Radius + by, Key + by * Diagonal);

    /// <summary>The shape a share of the way to another.</summary>
    internal KeyedSquare Toward(KeyedSquare other, double share) =>
        new(
            HalfX + (other.HalfX - HalfX) * share,
            HalfY + (other.HalfY - HalfY) * share,
            Radius + (other.Radius - Radius) * share,
            Key + (other.Key - Key) * share
        );

    /// <summary>The vertices about a centre, counter-clockwise from the front end of the cut corner.</summary>
    internal GridPoint[] Points(GridPoint centre)
    {
        int x = Grid.FromMillimetres(HalfX),
            y = Grid.FromMillimetres(HalfY),
            key = Grid.FromMillimetres(Key);
        var points = new List<GridPoint>(2 + 3 * CornerVertices)
        {
            centre.Offset(x - key, -y),
            centre.Offset(x, key - y),
        };
        AddCorner(points, centre, 0, 1, 1);
        AddCorner(points, centre, 1, -1, 1);
        AddCorner(points, centre, 2, -1, -1);
        return [.. points];
    }

    /// <summary>The outline about a centre.</summary>
    internal Outline At(GridPoint centre) => new(Points(centre));

    private void AddCorner(List<GridPoint> points, GridPoint centre, int quarter, int signX, int signY)
    {
        int radius = Grid.FromMillimetres(Radius);
        GridPoint middle = centre.Offset(
            signX * (Grid.FromMillimetres(HalfX) - radius),
            signY * (Grid.FromMillimetres(HalfY) - radius)
        );
        for (int i = 0; i < CornerVertices; i++)
        {
            (double sin, double cos) = Math.SinCos((quarter + i / (CornerVertices - 1.0)) * Math.PI / 2);
            points.Add(middle.Offset((int)Math.Round(radius * cos), (int)Math.Round(radius * sin)));
        }
    }
}
