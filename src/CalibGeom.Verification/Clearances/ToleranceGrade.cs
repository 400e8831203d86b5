namespace CalibGeom.Verification.Clearances;

/// <summary>
/// An ISO 286 grade as far as a measurement can tell it: the smallest whose half tolerance holds the deviation, but
/// none finer than the one whose half tolerance holds the measurement's own expanded uncertainty. Immutable.
/// </summary>
public sealed record ToleranceGrade
{
    private ToleranceGrade(int? grade, bool orBetter)
    {
        Grade = grade;
        OrBetter = orBetter;
    }

    /// <summary>The grade; null when there is none up to IT16 or the size is not tabled.</summary>
    public int? Grade { get; }

    /// <summary>Whether the deviation would be a finer grade, which this uncertainty cannot show.</summary>
    public bool OrBetter { get; }

    /// <summary>The grade of a deviation.</summary>
    /// <param name="nominal">Nominal size, mm.</param>
    /// <param name="deviation">Measured less nominal, mm.</param>
    /// <param name="expanded">Expanded uncertainty (95 %) of the deviation, mm.</param>
    public static ToleranceGrade Of(double nominal, double deviation, double expanded)
    {
        int? grade = Iso286.GradeOf(nominal, deviation),
            least = Iso286.GradeOf(nominal, expanded);
        return grade is { } g && (least is null || least > g)
            ? new ToleranceGrade(least ?? Iso286.CoarsestGrade, true)
            : new ToleranceGrade(grade, false);
    }

    /// <summary>In words: <c>IT9</c>, <c>IT7 or better</c>, <c>-</c>.</summary>
    public override string ToString() =>
        Grade is { } g ? FormattableString.Invariant($"IT{g}{(OrBetter ? " or better" : "")}") : "-";
}
