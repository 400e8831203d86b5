namespace CalibGeom.TestObjects.Layout;

/// <summary>A part to be placed on the plinth.</summary>
/// <param name="Name">The part: <c>box1</c>, <c>columns</c>, <c>slots</c>, <c>span.x</c>, <c>label</c> and the
/// like.</param>
/// <param name="Gap">The distance that other parts keep from it, mm.</param>
/// <param name="Forms">The ways it may stand; at least one.</param>
internal record LayoutItem(string Name, double Gap, IReadOnlyList<Footprint> Forms)
{
    /// <summary>Whether it is so low that it may stand close to others, but not near a lane.</summary>
    internal bool IsLabel { get; init; }

    /// <summary>Whether its faces lie whole pixels apart, where the spec asks for that.</summary>
    internal bool HasWholePixels { get; init; }

    /// <summary>
    /// The distance kept between this part and another: low labels may stand close to high parts, but not run into each
    /// other.
    /// </summary>
    internal double GapTo(LayoutItem other) =>
        IsLabel && other.IsLabel ? LabelToLabel
        : IsLabel || other.IsLabel ? Math.Min(Gap, other.Gap)
        : Math.Max(Gap, other.Gap);

    private const double LabelToLabel = 2.5;
}
