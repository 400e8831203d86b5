using CalibGeom.TestObjects;

namespace CalibGeom.Light;

/// <summary>
/// What light is predicted to make of a test object: sizes, clearances, open tunnels and the dose in its columns.
/// Immutable.
/// </summary>
public abstract class PredictedPrint
{
    // Lower than this no light is seen through a tunnel 1.5 mm deep: our estimate.
    internal const double LeastSeen = 0.03;

    /// <summary>A prediction.</summary>
    /// <param name="made">The object as designed.</param>
    /// <param name="blur">How light spreads sideways.</param>
    /// <param name="light">The light of all layers.</param>
    /// <param name="scale">Proportional change of all sizes, -0.1 to 0.1.</param>
    /// <param name="retreat">How far edges draw back, mm, -1 to 1.</param>
    /// <exception cref="ArgumentException">A value is out of its range.</exception>
    protected PredictedPrint(TestObject made, EdgeBlur blur, LayerLight light, double scale, double retreat)
    {
        ArgumentNullException.ThrowIfNull(made);
        ArgumentNullException.ThrowIfNull(blur);
        ArgumentNullException.ThrowIfNull(light);
        (Made, Blur, Light) = (made, blur, light);
        Scale = Require.Within(scale, -0.1, 0.1, "scale", "", nameof(scale));
        Retreat = Require.Within(retreat, -1, 1, "retreat of edges", "mm", nameof(retreat));
    }

    /// <summary>The object as designed.</summary>
    public TestObject Made { get; }

    /// <summary>How light spreads sideways.</summary>
    public EdgeBlur Blur { get; }

    /// <summary>The light of all layers.</summary>
    public LayerLight Light { get; }

    /// <summary>Proportional change of all sizes; -0.003 = 0.3 % too small.</summary>
    public double Scale { get; }

    /// <summary>How far edges draw back, by rest before exposure for example, mm.</summary>
    public double Retreat { get; }

    /// <summary>Every size in the object's feature table, in its order.</summary>
    public abstract IReadOnlyList<PrintedSize> Sizes();

    /// <summary>The dose on a column's axis half way up, over the critical dose.</summary>
    /// <param name="column">A column of the object.</param>
    public abstract double AxisRatio(ColumnPlan column);

    /// <summary>
    /// What light leaves of every slot of the squeeze tab, from the plate upward, in mm; 0 where it closes. None
    /// without a tab.
    /// </summary>
    public abstract IReadOnlyList<double> SqueezeGaps();

    /// <summary>
    /// The clearance of every fit of the object along each axis that it has mates on, in the order of the table.
    /// </summary>
    public IReadOnlyList<PrintedClearance> Clearances()
    {
        Dictionary<FeatureId, double?> sizes = Sizes().ToDictionary(s => s.Feature, s => s.Value);
        return
        [
            .. from fit in Made.Features
            from mate in fit.Mates
            select new PrintedClearance(
                fit.Id,
                mate.Axis,
                (sizes.GetValueOrDefault(mate.Outer) - sizes.GetValueOrDefault(mate.Inner)) / 2
            ),
        ];
    }

    /// <summary>
    /// How many tunnels of the slot comb stay open; one that is too low to see light through counts as closed.
    /// </summary>
    public int OpenSlots() =>
        Sizes()
            .Count(s =>
                s is { Value: >= LeastSeen, Feature: { Part: KnownFeatures.Slot, Size: KnownFeatures.Height } }
            );

    /// <summary>The gauge lines of the squeeze tab's slots, from the plate upward.</summary>
    private protected IEnumerable<GaugeLine> SqueezeSlots() =>
        Made.Gauges.Where(g => g.Feature.Part == KnownFeatures.Squeeze).OrderBy(g => g.From.Point.Z);
}
