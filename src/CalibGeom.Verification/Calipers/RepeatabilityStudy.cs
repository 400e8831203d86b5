namespace CalibGeom.Verification.Calipers;

/// <summary>
/// A crossed study of parts, persons and rounds by analysis of variance, after ISO 5725-2:2019 and the measurement
/// systems analysis manual of AIAG (4th edition): repeatability within a person and part, reproducibility between
/// persons. Immutable.
/// </summary>
public sealed record RepeatabilityStudy
{
    private RepeatabilityStudy(StudySquares s)
    {
        Parts = s.Parts;
        Persons = s.Persons;
        Rounds = s.Rounds;
        double residual = s.Within / (s.Parts * s.Persons * (s.Rounds - 1)),
            interaction = s.Parts > 1 && s.Persons > 1 ? s.Interaction / ((s.Parts - 1) * (s.Persons - 1)) : residual,
            persons = s.Persons > 1 ? s.BetweenPersons / (s.Persons - 1) : 0,
            parts = s.Parts > 1 ? s.BetweenParts / (s.Parts - 1) : 0;
        bool pooled = interaction <= residual || s.Persons == 1 || s.Parts == 1;
        DegreesOfFreedom = s.Parts * s.Persons * (s.Rounds - 1);
        double error = residual;
        if (pooled && s.Persons > 1 && s.Parts > 1)
        {
            int more = (s.Parts - 1) * (s.Persons - 1);
            error = (s.Within + s.Interaction) / (DegreesOfFreedom + more);
            DegreesOfFreedom += more;
            interaction = error;
        }
        Repeatability = Math.Sqrt(error);
        InteractionPooled = pooled;
        double both = pooled ? 0 : Math.Max(0, (interaction - error) / s.Rounds),
            between = s.Persons > 1 ? Math.Max(0, (persons - interaction) / (s.Parts * s.Rounds)) : 0;
        Reproducibility = Math.Sqrt(between + both);
        PartVariation = s.Parts > 1 ? Math.Sqrt(Math.Max(0, (parts - interaction) / (s.Persons * s.Rounds))) : 0;
        Squares = s;
    }

    /// <summary>How many parts.</summary>
    public int Parts { get; }

    /// <summary>How many persons.</summary>
    public int Persons { get; }

    /// <summary>How often each person read each part.</summary>
    public int Rounds { get; }

    /// <summary>Standard deviation of repeats by one person on one part.</summary>
    public double Repeatability { get; }

    /// <summary>Degrees of freedom of <see cref="Repeatability"/>.</summary>
    public int DegreesOfFreedom { get; }

    /// <summary>Standard deviation between persons, with that of persons on single parts; 0 with one person.</summary>
    public double Reproducibility { get; }

    /// <summary>Standard deviation of the parts.</summary>
    public double PartVariation { get; }

    /// <summary>Repeatability and reproducibility together.</summary>
    public double Together => Math.Sqrt(Repeatability * Repeatability + Reproducibility * Reproducibility);

    /// <summary>Whether persons and parts did not interact beyond repeats, so that both were pooled.</summary>
    public bool InteractionPooled { get; }

    internal StudySquares Squares { get; }

    /// <summary>
    /// A study of values[part][person][round], each cell with the same number of rounds, two at least.
    /// </summary>
    /// <param name="values">The values.</param>
    /// <exception cref="ArgumentException">Cells differ in size or hold fewer than two rounds.</exception>
    public static RepeatabilityStudy Of(IReadOnlyList<IReadOnlyList<IReadOnlyList<double>>> values)
    {
        ArgumentNullException.ThrowIfNull(values);
        if (
            values.Count == 0
            || values[0].Count == 0
            || values[0][0].Count < 2
            || values.Any(p => p.Count != values[0].Count || p.Any(c => c.Count != values[0][0].Count))
        )
            throw new ArgumentException(
                "A study needs every person to read every part equally often, two times at least.",
                nameof(values)
            );
        return new RepeatabilityStudy(StudySquares.Of(values));
    }

    /// <summary>The study that rows make, or null when they are no complete one.</summary>
    internal static RepeatabilityStudy? Of(IReadOnlyList<CaliperReading> rows)
    {
        string[] parts = rows.Select(r => r.Part).Distinct().Order(StringComparer.Ordinal).ToArray(),
            persons = rows.Select(r => r.Person).Distinct().Order(StringComparer.Ordinal).ToArray();
        double[][][] values = parts
            .Select(p =>
                persons
                    .Select(q => rows.Where(r => r.Part == p && r.Person == q).Select(r => r.Value).ToArray())
                    .ToArray()
            )
            .ToArray();
        int rounds = values.Length > 0 ? values[0][0].Length : 0;
        return rounds >= 2 && values.All(p => p.All(c => c.Length == rounds)) ? Of(values) : null;
    }
}
