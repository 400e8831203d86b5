using CalibGeom.TestObjects.Specs;

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

    /// <summary>
    /// An error among the base layers, a warning less than 2 mm above them: their light must not reach it.
    /// </summary>
    internal static IEnumerable<Finding> AboveBaseLayers(
        string rule,
        string subject,
        string what,
        double height,
        string spoilt,
        ProcessSpec process
    ) =>
        AtLeast(
            rule,
            subject,
            $"{what} above the base layers",
            height - process.BaseLayers * process.LayerHeight,
            0,
            AwayFromBaseLayers,
            "mm",
            $"Use fewer base layers or a thicker plinth: base exposure must not reach {spoilt}."
        );

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

    /// <summary>An error for every size that is not above the one before.</summary>
    internal static IEnumerable<Finding> Ascending(string subject, IReadOnlyList<double> values)
    {
        for (int i = 1; i < values.Count; i++)
            if (values[i] <= values[i - 1])
                yield return Finding(
                    "sizes-not-ascending",
                    Severity.Error,
                    subject,
                    $"Entry {i + 1}",
                    values[i],
                    values[i - 1],
                    "mm",
                    "List the sizes in ascending order, each once; for more columns of a diameter use columns.copies."
                );
    }

    /// <summary>A note on what a roof spans.</summary>
    internal static Finding Bridge(string subject, string what, double span) =>
        Note(
            "bridge",
            subject,
            FormattableString.Invariant(
                $"{what} bridges {span:0.##} mm; up to {LongestBridge} mm prints without supports."
            ),
            span,
            LongestBridge,
            "mm"
        );

    /// <summary>What a roof may span without supports, mm: common practice, no source.</summary>
    private const double LongestBridge = 3;

    /// <summary>How far above the base layers what answers to exposure keeps, mm.</summary>
    private const double AwayFromBaseLayers = 2.0;

    private const double Slack = 1e-9;

    private static string Spaced(string unit) => unit.Length == 0 ? "" : " " + unit;
}
