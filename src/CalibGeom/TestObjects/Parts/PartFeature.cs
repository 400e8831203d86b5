namespace CalibGeom.TestObjects.Parts;

/// <summary>A row of the feature table and where it is measured. Immutable.</summary>
/// <param name="Feature">The row.</param>
/// <param name="Lines">The lines that a size is measured along, or the gaps that a count counts; none for what is only
/// felt or looked at.</param>
public sealed record PartFeature(Feature Feature, IReadOnlyList<GaugeLine> Lines)
{
    /// <summary>
    /// The size that the spec asks for, before whole pixels, in mm; null when it is the nominal. Default null.
    /// </summary>
    public double? Wanted { get; init; }

    /// <summary>
    /// A size: its nominal is the length of its gauge lines, and along x and y these say whether it is solid or free.
    /// </summary>
    /// <param name="axis"><c>x</c>, <c>y</c>, <c>z</c>, or empty where none applies.</param>
    /// <param name="how">How to measure it, as a short instruction.</param>
    /// <param name="lines">Its lines, all with the feature's id; at least one.</param>
    /// <exception cref="ArgumentException">There is no line.</exception>
    public static PartFeature Size(string axis, string how, params IReadOnlyList<GaugeLine> lines)
    {
        ArgumentNullException.ThrowIfNull(lines);
        if (lines.Count == 0)
            throw new ArgumentException("A size needs at least one gauge line.", nameof(lines));
        var feature = new Feature(lines[0].Feature, Tidy(lines[0].Length()), "mm", axis, how);
        return new PartFeature(axis is "x" or "y" ? feature.With(FacesOf(lines[0])) : feature, lines);
    }

    /// <summary>
    /// A count, its nominal being the number of gauge lines; the lengths of those that are gaps are its openings.
    /// </summary>
    /// <param name="id">The feature id, such as <c>slots.open</c>.</param>
    /// <param name="how">How to count them, as a short instruction.</param>
    /// <param name="lines">One gauge line for each thing to count, in the order in which they stand; none counts
    /// nothing.</param>
    public static PartFeature Count(FeatureId id, string how, IReadOnlyList<GaugeLine> lines)
    {
        ArgumentNullException.ThrowIfNull(lines);
        return new PartFeature(
            new Feature(id, lines.Count, "count", "", how)
            {
                Openings = lines.Where(l => l.IsGap).Select(l => Tidy(l.Length())).ToValueList(),
            },
            lines
        );
    }

    /// <summary>A fit to be felt: what goes into what, one mate an axis.</summary>
    /// <param name="id">The feature id, such as <c>keyway.fit</c>.</param>
    /// <param name="how">How to put the two together, as a short instruction.</param>
    /// <param name="mates">What goes into what; at least one.</param>
    /// <exception cref="ArgumentException">There is no mate.</exception>
    public static PartFeature Fit(FeatureId id, string how, params IReadOnlyList<Mate> mates)
    {
        ArgumentNullException.ThrowIfNull(id);
        ArgumentNullException.ThrowIfNull(mates);
        if (mates.Count == 0)
            throw new ArgumentException("A fit needs at least one mate.", nameof(mates));
        Mate tightest = mates.MinBy(m => m.Clearance)!;
        string axis = mates.Count == 1 || mates.Any(m => m.Clearance > tightest.Clearance) ? tightest.Axis : "";
        var feature = new Feature(id, Tidy(tightest.Clearance), "fit", axis, how) { Mates = mates.ToValueList() };
        return new PartFeature(feature, []);
    }

    private static FaceKind FacesOf(GaugeLine line) =>
        line.IsSolid ? FaceKind.Outside
        : line.IsGap ? FaceKind.Inside
        : FaceKind.None;

    /// <summary>The same with another row.</summary>
    internal PartFeature With(Func<Feature, Feature> change) => this with { Feature = change(Feature) };

    /// <summary>Takes off what sums in binary leave behind: 11.299999999999999 is 11.3.</summary>
    internal static double Tidy(double length) => Math.Round(length, 9);
}
