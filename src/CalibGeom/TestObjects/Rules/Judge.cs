namespace CalibGeom.TestObjects.Rules;

/// <summary>Makes findings of values held against limits.</summary>
internal static class Judge
{
    /// <summary>A finding about a value; the message ends with the value and the limit.</summary>
    internal static Finding Finding(
        string rule,
        Severity severity,
        string subject,
        string what,
        double value,
        double limit,
        string unit,
        string remedy
    ) =>
        new(
            rule,
            severity,
            subject,
            FormattableString.Invariant(
                $"{what} is {value:0.###}{Spaced(unit)}; the limit is {limit:0.###}{Spaced(unit)}."
            ),
            remedy
        )
        {
            Value = value,
            Limit = limit,
            Unit = unit,
        };

    /// <summary>An error below one limit, a warning below another, else nothing.</summary>
    internal static IEnumerable<Finding> AtLeast(
        string rule,
        string subject,
        string what,
        double value,
        double error,
        double warning,
        string unit,
        string remedy
    )
    {
        if (value < error - Slack)
            yield return Finding(rule, Severity.Error, subject, what, value, error, unit, remedy);
        else if (value < warning - Slack)
            yield return Finding(rule, Severity.Warning, subject, what, value, warning, unit, remedy);
    }

    /// <summary>A warning above a limit, else nothing.</summary>
    internal static IEnumerable<Finding> AtMost(
        string rule,
        string subject,
        string what,
        double value,
        double warning,
        string unit,
        string remedy
    )
    {
        if (value > warning + Slack)
            yield return Finding(rule, Severity.Warning, subject, what, value, warning, unit, remedy);
    }

    /// <summary>A note with a value.</summary>
    internal static Finding Note(
        string rule,
        string subject,
        string message,
        double? value = null,
        double? limit = null,
        string unit = ""
    ) =>
        new(rule, Severity.Note, subject, message, "")
        {
            Value = value,
            Limit = limit,
            Unit = unit,
        };

    private const double Slack = 1e-9;

    private static string Spaced(string unit) => unit.Length == 0 ? "" : " " + unit;
}
