using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Testing;

/// <summary>
/// A print of which everything is known, for tests of what is made of readings: along an axis a size W between solid
/// faces comes out as W (1 + s) + 2 g, one between free faces as W (1 + s) - 2 g, with scale s and growth g; what
/// answers to neither as designed. Immutable and safe to share between threads.
/// </summary>
public sealed record KnownPrint
{
    /// <summary>A print that came out as designed, unless more is said.</summary>
    /// <param name="features">What was printed.</param>
    public KnownPrint(FeatureTable features)
    {
        ArgumentNullException.ThrowIfNull(features);
        Features = features;
    }

    /// <summary>What was printed.</summary>
    public FeatureTable Features { get; }

    /// <summary>How far each edge along X grew, mm, -1 to 1; positive = solids larger. Default 0.</summary>
    /// <exception cref="ArgumentException">It is out of range.</exception>
    public double GrowthX
    {
        get;
        init => field = Require.Within(value, -1, 1, "growth", "mm", nameof(GrowthX));
    }

    /// <summary>How far each edge along Y grew, mm, -1 to 1; positive = solids larger. Default 0.</summary>
    /// <exception cref="ArgumentException">It is out of range.</exception>
    public double GrowthY
    {
        get;
        init => field = Require.Within(value, -1, 1, "growth", "mm", nameof(GrowthY));
    }

    /// <summary>Proportional change along X, -0.1 to 0.1; -0.003 = 0.3 % too small. Default 0.</summary>
    /// <exception cref="ArgumentException">It is out of range.</exception>
    public double ScaleX
    {
        get;
        init => field = Require.Within(value, -0.1, 0.1, "scale", "", nameof(ScaleX));
    }

    /// <summary>Proportional change along Y, -0.1 to 0.1. Default 0.</summary>
    /// <exception cref="ArgumentException">It is out of range.</exception>
    public double ScaleY
    {
        get;
        init => field = Require.Within(value, -0.1, 0.1, "scale", "", nameof(ScaleY));
    }

    /// <summary>
    /// How far light cured below roofs, mm, 0 to 10: tunnels lower than this are not open, and the beam of a bridge is
    /// thicker by as much. Default 0.
    /// </summary>
    /// <exception cref="ArgumentException">It is out of range.</exception>
    public double PrintThrough
    {
        get;
        init => field = Require.Within(value, 0, 10, "print-through", "mm", nameof(PrintThrough));
    }

    /// <summary>The diameter of column in mm, 0 to 100, below which columns were lost; all others stood to the end.
    /// Default 0: all stood.</summary>
    /// <exception cref="ArgumentException">It is out of range.</exception>
    public double ThinnestColumn
    {
        get;
        init => field = Require.Within(value, 0, 100, "diameter", "mm", nameof(ThinnestColumn));
    }

    /// <summary>What had been done to the part when it was read. Default washed and dry.</summary>
    public PartState State { get; init; } = PartState.Dry;

    /// <summary>Whether the material gives under the jaws; null when nobody says. Default rigid.</summary>
    public Material? Material { get; init; } = Verification.Readings.Material.Rigid;

    /// <summary>The true size of a feature, mm.</summary>
    /// <param name="feature">A feature whose unit is mm.</param>
    /// <exception cref="ArgumentException">The feature is no size.</exception>
    public double SizeOf(Feature feature)
    {
        ArgumentNullException.ThrowIfNull(feature);
        if (feature.Unit != "mm")
            throw new ArgumentException($"{feature.Id} is no size in mm.", nameof(feature));
        double way = feature.Faces switch
        {
            FaceKind.Outside => 2,
            FaceKind.Inside => -2,
            _ => 0,
        };
        return feature.Axis switch
        {
            "x" => feature.Nominal * (1 + ScaleX) + way * GrowthX,
            "y" => feature.Nominal * (1 + ScaleY) + way * GrowthY,
            _ => feature.Nominal + (feature.Id.OfObject == KnownFeatures.BridgeThickness ? PrintThrough : 0),
        };
    }

    /// <summary>The true size of a feature, mm.</summary>
    /// <param name="feature">Its id, such as <c>box1.outside.x</c>.</param>
    /// <exception cref="ArgumentException">The object has no such feature, or it is no size.</exception>
    public double SizeOf(string feature) => SizeOf(Find(feature));

    /// <summary>The true clearance of a fit along an axis, mm per side, below 0 where the two overlap.</summary>
    /// <param name="fit">The fit's id, such as <c>joint1.fit</c>.</param>
    /// <param name="axis"><c>x</c> or <c>y</c>, or empty for what is round.</param>
    /// <exception cref="ArgumentException">The object has no such fit, or it has nothing along this axis.</exception>
    public double ClearanceOf(string fit, string axis) =>
        Find(fit).Mates.FirstOrDefault(m => m.Axis == axis) is { } mate
            ? GapOf(mate)
            : throw new ArgumentException($"{fit} has no mates along \"{axis}\".", nameof(axis));

    /// <summary>
    /// The readings a person writes down: every size that predictions use, every fit, count and column, in the order of
    /// the table.
    /// </summary>
    /// <param name="caliper">Who reads with what; null for a caliper without fault.</param>
    /// <param name="seed">What form and scatter are drawn from. Default 1.</param>
    /// <param name="repeats">How often each size is read, 1 to 20. Default 1.</param>
    /// <exception cref="ArgumentException">The number of repeats is out of range, or a size came out as
    /// nothing.</exception>
    public ReadingSet Read(SimulatedCaliper? caliper = null, ulong seed = 1, int repeats = 1)
    {
        SimulatedCaliper reader = caliper ?? SimulatedCaliper.Faultless;
        var random = new SeededRandom(seed);
        IEnumerable<Reading> readings = Features.SelectMany(f => ReadingsOf(f, reader, random, repeats));
        return Sheet.Of(readings, reader, Features, State, Material);
    }

    private IEnumerable<Reading> ReadingsOf(Feature f, SimulatedCaliper reader, SeededRandom random, int repeats) =>
        f.Unit switch
        {
            "fit" when f.Mates.Count > 0 => [reader.Feel(f.Id, [.. f.Mates.Select(GapOf)], random)],
            "count" => [Reading.Count(f.Id, CountOf(f))],
            "stage" => [Reading.Stood(f.Id, Stands(f) ? ColumnStage.Cure : ColumnStage.Lost)],
            "mm" when f.Step != WorkStep.Last => reader.Read(f.Id, f.Faces, SizeOf(f), random, repeats),
            _ => [],
        };

    /// <summary>Of what light does not close, and where heights are not known, all are there.</summary>
    private int CountOf(Feature count) =>
        count is { Id.Size: KnownFeatures.Open, Openings.Count: > 0 }
            ? count.Openings.Count(h => h > PrintThrough)
            : (int)count.Nominal;

    private bool Stands(Feature stood) =>
        Features.Find(stood.Id.With(KnownFeatures.Diameter)) is not { } diameter || diameter.Nominal >= ThinnestColumn;

    private double GapOf(Mate mate) => (SizeOf(mate.Outer) - SizeOf(mate.Inner)) / 2;

    private Feature Find(string id) =>
        Features.Find(id) ?? throw new ArgumentException($"The object has no feature {id}.", nameof(id));
}
