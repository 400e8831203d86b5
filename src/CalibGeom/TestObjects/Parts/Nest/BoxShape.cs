using CalibGeom.Planar;

namespace CalibGeom.TestObjects.Parts.Nest;

/// <summary>
/// One box in its own frame: its axis at x = y = 0, z = 0 where it stands on the plinth. From below: neck or waist,
/// taper, straight part with the gauge band; inside: well with two vents, pocket, lead-in.
/// </summary>
internal sealed class BoxShape
{
    private readonly (double Z, KeyedSquare Section)[] profile;
    private readonly bool isInnermost;

    private BoxShape(
        BoxFrame frame,
        bool isInnermost,
        BoxWell well,
        (double Z, KeyedSquare Section)[] profile,
        double taperTop
    )
    {
        Frame = frame;
        this.isInnermost = isInnermost;
        Well = well;
        this.profile = Array.ConvertAll(profile, p => (Grid.Snap(p.Z), p.Section));
        PocketFloor = Grid.Snap(taperTop);
    }

    /// <summary>Widths and depths that the shape follows from.</summary>
    internal BoxFrame Frame { get; }

    /// <summary>
    /// Whether it has a pocket: an innermost box that no caliper's inside jaws would go into is solid, since nobody
    /// uses its pocket, and so is one whose taper leaves no wall beside the well of its vents.
    /// </summary>
    internal bool HasPocket =>
        !isInnermost || (Frame.SmallestInside >= BoxFrame.LeastPocket && WallBesideWell >= BoxRules.LeastWall);

    /// <summary>The blind well in the pocket's floor.</summary>
    internal BoxWell Well { get; }

    /// <summary>Top of the taper and floor of the pocket, mm.</summary>
    internal double PocketFloor { get; }

    /// <summary>Floor of the well, mm.</summary>
    internal double WellFloor => PocketFloor - Grid.Snap(Well.Depth);

    /// <summary>Top of the box, mm.</summary>
    internal double Rim => profile[^1].Z;

    /// <summary>Lower end of the gauge band, mm.</summary>
    internal double BandBottom => PocketFloor + Frame.BandOffset;

    /// <summary>Upper end of the gauge band, mm.</summary>
    internal double BandTop => BandBottom + Frame.GaugeBand;

    /// <summary>Heights where the outside bends, ascending.</summary>
    internal IEnumerable<double> Bends => profile.Select(p => p.Z);

    /// <summary>The outside section at a height from 0 to <see cref="Rim"/>.</summary>
    internal KeyedSquare Outer(double z)
    {
        int above = Array.FindIndex(profile, p => p.Z >= z);
        if (above < 0)
            return profile[^1].Section;
        (double topZ, KeyedSquare top) = profile[above];
        if (above == 0 || topZ == z)
            return top;
        (double bottomZ, KeyedSquare bottom) = profile[above - 1];
        return bottom.Toward(top, (z - bottomZ) / (topZ - bottomZ));
    }

    /// <summary>The height at which the outside of the taper first has half a width on either axis, mm.</summary>
    internal double HeightOfHalfWidth(double half)
    {
        (double z0, KeyedSquare s0) = profile[^3];
        (double z1, KeyedSquare s1) = profile[^2];
        double shareX = (half - s0.HalfX) / (s1.HalfX - s0.HalfX),
            shareY = (half - s0.HalfY) / (s1.HalfY - s0.HalfY);
        return z0 + (z1 - z0) * Math.Clamp(Math.Min(shareX, shareY), 0, 1);
    }

    /// <summary>Wall beside the well, at its floor, mm.</summary>
    internal double WallBesideWell
    {
        get
        {
            KeyedSquare outer = Outer(WellFloor);
            return Math.Min(outer.HalfX, outer.HalfY) - Well.Section.HalfX;
        }
    }

    /// <summary>A box that breaks away from the plinth.</summary>
    internal static BoxShape Loose(BoxFrame frame, BoxShape? inner)
    {
        KeyedSquare full = frame.Full;
        double taper = (Math.Max(full.HalfX, full.HalfY) - Proportions.Notch / 2) / Proportions.TaperTangent;
        double top = Proportions.NeckHeight + taper;
        var profile = new[]
        {
            (0.0, Foot(Proportions.NeckFoot)),
            (Proportions.NeckHeight, Foot(Proportions.Notch)),
            (top, full),
            (top + frame.PocketDepth, full),
        };
        return Fit(frame, inner, profile, top);
    }

    /// <summary>The box that stays on the plinth.</summary>
    internal static BoxShape OnWaist(BoxFrame frame, BoxShape? inner)
    {
        KeyedSquare full = frame.Full;
        double share = Proportions.WaistShare;
        var waist = new KeyedSquare(full.HalfX * share, full.HalfY * share, full.Radius * share, full.Key * share);
        double taper = Math.Max(full.HalfX, full.HalfY) * (1 - share) / Proportions.TaperTangent;
        double straight = Math.Max(0, Proportions.BandAbovePlinth - frame.BandOffset - taper);
        BoxShape shape = Fit(frame, inner, Profile(straight), straight + taper);
        double missing = shape.Well.Depth + Proportions.FloorThickness - shape.PocketFloor;
        return missing <= 0 ? shape : Fit(frame, inner, Profile(straight + missing), straight + missing + taper);

        (double, KeyedSquare)[] Profile(double waistHeight) =>
            waistHeight > 0
                ?
                [
                    (0, waist),
                    (waistHeight, waist),
                    (waistHeight + taper, full),
                    (waistHeight + taper + frame.PocketDepth, full),
                ]
                : [(0, waist), (taper, full), (taper + frame.PocketDepth, full)];
    }

    private static KeyedSquare Foot(double width) => new(width / 2, width / 2, width / 5, width / 5);

    /// <summary>
    /// By how much a well is made narrower at a time until the wall beside it holds, mm: about a pixel.
    /// </summary>
    private const double WellStep = 0.05;

    private static BoxShape Fit(BoxFrame frame, BoxShape? inner, (double, KeyedSquare)[] profile, double taperTop)
    {
        double half = BoxWell.WidestHalf(frame, inner);
        for (; ; half -= WellStep)
        {
            var shape = new BoxShape(frame, inner is null, BoxWell.Around(frame, inner, half), profile, taperTop);
            if (half <= BoxWell.LeastHalf(inner) || shape.WallBesideWell >= Proportions.WellWall)
                return shape;
        }
    }
}
