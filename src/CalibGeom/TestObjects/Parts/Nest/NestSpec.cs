namespace CalibGeom.TestObjects.Parts.Nest;

/// <summary>
/// Square boxes that fit into each other. Box 1 is the innermost; joint j lies between box j and box j+1. Immutable;
/// every value is checked when it is set, so that a spec that exists is in range. Compares by value.
/// </summary>
public sealed record NestSpec
{
    /// <summary>The clearance of a joint that no one is given for, mm.</summary>
    internal const double DefaultClearance = 0.05;

    private readonly ValueList<PerAxis>? clearances;

    /// <summary>How many joints the boxes make: one less than boxes.</summary>
    public int JointCount => Sizes.Count - 1;

    /// <summary>
    /// Outside widths, ascending; box 1 first. Range 1 to 8 entries, each 3 to 100 mm. Default [8.0, 11.2, 16.0] mm.
    /// </summary>
    /// <exception cref="ArgumentException">Too few or too many entries, or one out of range.</exception>
    public ValueList<double> Sizes
    {
        get;
        init => field = NestParameters.Sizes.Require(value);
    } = [8.0, 11.2, 16.0];

    /// <summary>
    /// Clearance per side of each joint, positive = gap; joint j stands at index j - 1. One entry for each pair of
    /// neighbouring boxes; that is checked when the group is put into a <see cref="Specs.TestObjectSpec"/>. Each -1 to
    /// 2 mm. Default 0.05 mm for every joint, however many there are.
    /// </summary>
    /// <exception cref="ArgumentException">Too many entries, or one out of range.</exception>
    public ValueList<PerAxis> Clearances
    {
        get => clearances ?? Enumerable.Repeat<PerAxis>(DefaultClearance, JointCount).ToValueList();
        init => clearances = NestParameters.Clearances.Require(value);
    }

    /// <summary>Wall of box 1, which gives it its pocket. Range 0.4 to 10 mm. Default 1.2 mm.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Out of range, or not a number.</exception>
    public double Wall
    {
        get;
        init => field = NestParameters.Wall.Require(value);
    } = 1.2;

    /// <summary>Height of the level band where widths are measured. Range 1 to 40 mm. Default 6.3 mm.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Out of range, or not a number.</exception>
    public double GaugeBand
    {
        get;
        init => field = NestParameters.GaugeBand.Require(value);
    } = 6.3;

    /// <summary>Depth of each pocket from the mouth to the floor. Range 1 to 60 mm. Default 8.0 mm.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Out of range, or not a number.</exception>
    public double PocketDepth
    {
        get;
        init => field = NestParameters.PocketDepth.Require(value);
    } = 8.0;

    /// <summary>
    /// Whether both describe the same nest; clearances that are left out equal ones given as the default.
    /// </summary>
    /// <param name="other">The other nest.</param>
    public bool Equals(NestSpec? other) => other is not null && Key.Equals(other.Key);

    /// <inheritdoc/>
    public override int GetHashCode() => Key.GetHashCode();

    private (
        ValueList<double> Sizes,
        ValueList<PerAxis> Clearances,
        double Wall,
        double GaugeBand,
        double PocketDepth
    ) Key => (Sizes, Clearances, Wall, GaugeBand, PocketDepth);

    /// <summary>What is wrong between two of the parameters, or null.</summary>
    internal string? Problem =>
        Clearances.Count == JointCount
            ? null
            : $"nest.clearances needs one entry for each pair of neighbouring boxes: {JointCount} for "
                + $"{Sizes.Count} boxes; it has {Clearances.Count}.";
}
