using CalibGeom.Verification.Logs;

namespace CalibGeom.Verification.Tuning;

/// <summary>
/// What the prints say of the scale along one axis: the proportional change of the process itself, without what was
/// typed, and what to type. Immutable.
/// </summary>
/// <param name="Change">Proportional change of the process, mean of the prints: -0.002 is 0.2 % too small.</param>
/// <param name="Uncertainty">Its standard uncertainty: that of one print, because prints share the caliper's
/// bias.</param>
/// <param name="ToType">The scale to type in the slicer; 1 where it does not differ from 1 beyond doubt.</param>
public sealed record ScaleAdvice(double Change, double Uncertainty, double ToType)
{
    // Two-sided probability of 0.3 % by chance: beyond doubt.
    private const double Beyond = 3;

    /// <summary>Whether the change differs from none beyond doubt.</summary>
    public bool Told => Math.Abs(Change) > Beyond * Uncertainty;

    internal static ScaleAdvice? Of(
        IReadOnlyList<Trial> trials,
        Func<Trial, ScaleReading?> read,
        Func<SlicerScale, double> typed
    )
    {
        Trial[] with = [.. trials.Where(t => read(t) is not null)];
        if (with.Length == 0)
            return null;
        double change = with.Average(t => (1 + read(t)!.Value) / typed(t.Scale) - 1),
            uncertainty = with.Average(t => read(t)!.Uncertainty);
        var plain = new ScaleAdvice(change, uncertainty, 1);
        return plain.Told ? plain with { ToType = Math.Round(1 / (1 + change), 4) } : plain;
    }
}
