namespace CalibGeom.TestObjects.Parts.Nest;

/// <summary>
/// The blind well in a pocket's floor: the taper of the next smaller box sits on its rim and the foot hangs free in it.
/// </summary>
/// <param name="Section">Its square section.</param>
/// <param name="Depth">Below the pocket's floor, mm.</param>
internal sealed record BoxWell(KeyedSquare Section, double Depth)
{
    /// <summary>The well's straight front and back walls run from here ...</summary>
    internal double StraightLeft => Section.Radius - Section.HalfX;

    /// <summary>... to here: the cut corner ends the front wall, the rounded one the back wall.</summary>
    internal double StraightRight => Section.HalfX - Math.Max(Section.Radius, Section.Key);

    /// <summary>Width of the two vents, mm; not above 0 when the well is too narrow for any.</summary>
    internal double VentWidth => Math.Min(Proportions.VentWidth, StraightRight - StraightLeft - 2 * VentInset);

    /// <summary>From the end of the straight wall to the vent, mm.</summary>
    internal const double VentInset = 0.05;

    /// <summary>
    /// The well's corner is cut by less than that of the box which hangs in it, so that flat faces meet first.
    /// </summary>
    private const double KeyShare = 0.6;

    /// <summary>
    /// Half the width of the well if only the next smaller box mattered: its taper shall sit low, so that the gauge
    /// bands meet.
    /// </summary>
    internal static double WidestHalf(BoxFrame frame, BoxShape? inner) =>
        Math.Max(
            LeastHalf(inner),
            inner is null
                ? frame.SmallestInside * Proportions.WellShare / 2
                : frame.SmallestInside / 2
                    - Math.Max(Proportions.SeatHeight, Proportions.SeatShare * frame.GaugeBand)
                        * Proportions.TaperTangent
        );

    /// <summary>
    /// Half the width that the foot of the next smaller box, or without one the vents, need at least.
    /// </summary>
    internal static double LeastHalf(BoxShape? inner) =>
        inner is null
            ? (Proportions.VentWidth + 2 * VentInset) / 2 + Proportions.InsideRadius
            : Proportions.NeckFoot / 2 + Proportions.WellRoom;

    internal static BoxWell Around(BoxFrame frame, BoxShape? inner, double half)
    {
        double radius = frame.Pocket.Radius;
        if (inner is null)
            return new(new(half, half, radius, radius), Proportions.VentHeight + Proportions.WellRoom);
        double seat = inner.HeightOfHalfWidth(half);
        return new(
            new(half, half, radius, Math.Max(radius, KeyShare * inner.Outer(seat).Key)),
            Math.Max(seat, Proportions.VentHeight) + Proportions.WellRoom
        );
    }
}
