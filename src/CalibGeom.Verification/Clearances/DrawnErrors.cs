using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Clearances;

/// <summary>
/// The errors of all sources that some quantities depend on, a draw at a time. Few are kept, many are drawn anew from
/// the same seed each time that they are gone through, so that memory has a bound.
/// </summary>
internal sealed class DrawnErrors
{
    /// <summary>How many numbers are kept at most: 64 MB.</summary>
    private const long Kept = 8_000_000;

    private readonly PredictionOptions options;
    private readonly Dictionary<int, int> place;
    private readonly double[] freedom;
    private readonly int[] componentOf;
    private readonly int joints;
    private double[]? kept;

    internal DrawnErrors(IReadOnlyList<LinearEstimate> quantities, int joints, PredictionOptions options)
    {
        this.options = options;
        this.joints = joints;
        IReadOnlyList<ErrorSource> all = quantities.MaxBy(e => e.Factors.Length)!.Sources;
        int[] active =
        [
            .. Enumerable
                .Range(0, all.Count)
                .Where(k => quantities.Any(e => k < e.Factors.Length && e.Factors[k] != 0)),
        ];
        Sources = [.. active.Select(k => all[k])];
        place = active.Select((k, i) => (k, i)).ToDictionary(p => p.k, p => p.i);
        var components = new Dictionary<string, int>(StringComparer.Ordinal);
        var known = new List<double>();
        foreach (ErrorSource s in Sources.Where(s => double.IsFinite(s.DegreesOfFreedom)))
            if (components.TryAdd(s.Component, known.Count))
                known.Add(s.DegreesOfFreedom);
        freedom = [.. known];
        componentOf = [.. Sources.Select(s => components.GetValueOrDefault(s.Component, -1))];
    }

    /// <summary>What is done with a draw; what it is given lasts no longer.</summary>
    internal delegate void Use(int draw, ReadOnlySpan<double> errors, ReadOnlySpan<double> shifts);

    /// <summary>The sources that matter, in the order of a draw's errors.</summary>
    internal ErrorSource[] Sources { get; }

    /// <summary>What an estimate takes of each of <see cref="Sources"/>, ascending, zeros left out.</summary>
    internal (int Source, double Factor)[] FactorsOf(LinearEstimate e) =>
        [
            .. place
                .Where(p => p.Key < e.Factors.Length && e.Factors[p.Key] != 0)
                .Select(p => (p.Value, e.Factors[p.Key]))
                .OrderBy(p => p.Value),
        ];

    /// <summary>Goes through all draws; always the same ones. Shifts are empty where the draws were kept.</summary>
    internal void Each(Use use, CancellationToken cancellation)
    {
        int width = Sources.Length;
        if (kept is not null)
            for (int n = 0; n < options.Draws; n++)
                use(n, kept.AsSpan(n * width, width), []);
        else if ((long)width * options.Draws > Kept)
            Draw(use, cancellation);
        else
        {
            double[] store = new double[width * options.Draws];
            Draw(
                (n, errors, shifts) =>
                {
                    errors.CopyTo(store.AsSpan(n * width, width));
                    use(n, errors, shifts);
                },
                cancellation
            );
            kept = store;
        }
    }

    private void Draw(Use use, CancellationToken cancellation)
    {
        var random = new SeededRandom(options.Seed);
        var person = new FeltPerson(options.Thresholds);
        bool shaped = options.Route == Route.MonteCarlo;
        double[] inflation = new double[freedom.Length],
            errors = new double[Sources.Length],
            shifts = new double[joints];
        for (int n = 0; n < options.Draws; n++)
        {
            cancellation.ThrowIfCancellationRequested();
            for (int c = 0; c < inflation.Length; c++)
                inflation[c] = Math.Sqrt(freedom[c] / random.ChiSquared(freedom[c]));
            for (int k = 0; k < errors.Length; k++)
            {
                double factor = componentOf[k] < 0 ? 1 : inflation[componentOf[k]];
                errors[k] = shaped ? Sources[k].Draw(random, factor) : Sources[k].U * factor * random.Normal();
            }
            person.Draw(random, shifts);
            use(n, errors, shifts);
        }
    }
}
