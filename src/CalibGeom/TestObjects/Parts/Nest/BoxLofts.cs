using CalibGeom.Planar;
using CalibGeom.Solids;

namespace CalibGeom.TestObjects.Parts.Nest;

/// <summary>The lofts of one box.</summary>
internal static class BoxLofts
{
    internal static IEnumerable<Loft> Of(BoxShape box, GridPoint centre, double baseZ)
    {
        double ventTop = box.WellFloor + Proportions.VentHeight,
            leadIn = box.Rim - Proportions.LeadInHeight;
        IEnumerable<double> inside = box.HasPocket ? [box.WellFloor, ventTop, leadIn] : [];
        double[] levels = Ascending.Of(box.Bends.Concat(inside).Select(z => Grid.Snap(baseZ + z)));
        for (int i = 0; i + 1 < levels.Length; i++)
        {
            (double z0, double z1) = (levels[i], levels[i + 1]);
            GridPoint[] bottom = box.Outer(z0 - baseZ).Points(centre),
                top = box.Outer(z1 - baseZ).Points(centre);
            double middle = (z0 + z1) / 2 - baseZ;
            if (middle < box.WellFloor || !box.HasPocket)
                yield return new Loft(new Outline(bottom), z0, new Outline(top), z1);
            else if (middle < ventTop)
                foreach (Loft side in Vented(box.Well, centre, bottom, z0, top, z1))
                    yield return side;
            else
                yield return Ring(box, centre, bottom, z0, top, z1, middle);
        }
    }

    private static Loft Ring(
        BoxShape box,
        GridPoint centre,
        GridPoint[] bottom,
        double z0,
        GridPoint[] top,
        double z1,
        double middle
    )
    {
        KeyedSquare lower = middle < box.PocketFloor ? box.Well.Section : box.Frame.Pocket;
        KeyedSquare upper = middle < box.Rim - Proportions.LeadInHeight ? lower : box.Frame.Mouth;
        return new Loft(
            new Region(new Outline(bottom), lower.At(centre)),
            z0,
            new Region(new Outline(top), upper.At(centre)),
            z1
        );
    }

    /// <summary>
    /// The two halves of the ring round the well, apart by a vent in front near -X and one in the back near +X.
    /// </summary>
    private static IEnumerable<Loft> Vented(
        BoxWell well,
        GridPoint centre,
        GridPoint[] bottom,
        double z0,
        GridPoint[] top,
        double z1
    )
    {
        int width = Grid.FromMillimetres(well.VentWidth),
            inset = Grid.FromMillimetres(BoxWell.VentInset);
        int front = centre.X + Grid.FromMillimetres(well.StraightLeft) + inset;
        int back = centre.X - Grid.FromMillimetres(well.StraightLeft) - inset - width;
        GridPoint[] inner = well.Section.Points(centre);
        yield return new Loft(
            East(bottom, inner, front + width, back + width),
            z0,
            East(top, inner, front + width, back + width),
            z1
        );
        yield return new Loft(West(bottom, inner, front, back), z0, West(top, inner, front, back), z1);
    }

    private static Outline East(GridPoint[] outer, GridPoint[] inner, int front, int back)
    {
        const int Count = KeyedSquare.EastVertices;
        return new Outline([
            new(front, outer[0].Y),
            .. outer[..Count],
            new(back, outer[Count].Y),
            new(back, inner[Count].Y),
            .. inner[..Count].Reverse(),
            new(front, inner[0].Y),
        ]);
    }

    private static Outline West(GridPoint[] outer, GridPoint[] inner, int front, int back)
    {
        const int Count = KeyedSquare.EastVertices;
        return new Outline([
            new(back, outer[Count].Y),
            .. outer[Count..],
            new(front, outer[0].Y),
            new(front, inner[0].Y),
            .. inner[Count..].Reverse(),
            new(back, inner[Count].Y),
        ]);
    }
}
