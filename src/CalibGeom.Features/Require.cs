namespace CalibGeom.Features;

/// <summary>Checks of arguments with one wording, for constructors of objects that are valid once they exist.</summary>
public static class Require
{
    /// <summary>The value, when it lies between the limits, both included.</summary>
    /// <param name="value">The value.</param>
    /// <param name="least">The least that is allowed.</param>
    /// <param name="most">The most that is allowed.</param>
    /// <param name="what">What it is, such as <c>scale</c>.</param>
    /// <param name="unit">Its unit; may be empty.</param>
    /// <param name="parameter">The parameter's name.</param>
    /// <exception cref="ArgumentException">It lies outside, or is no number.</exception>
    public static double Within(double value, double least, double most, string what, string unit, string parameter) =>
        value >= least && value <= most
            ? value
            : throw new ArgumentException(Sentence(what, $"{least} to {most}", unit, value), parameter);

    /// <summary>The value, when it is above 0 and at most the limit.</summary>
    /// <param name="value">The value.</param>
    /// <param name="most">The most that is allowed.</param>
    /// <param name="what">What it is, such as <c>exposure time</c>.</param>
    /// <param name="unit">Its unit; may be empty.</param>
    /// <param name="parameter">The parameter's name.</param>
    /// <exception cref="ArgumentException">It lies outside, or is no number.</exception>
    public static double Positive(double value, double most, string what, string unit, string parameter) =>
        value > 0 && value <= most
            ? value
            : throw new ArgumentException(Sentence(what, $"above 0 and at most {most}", unit, value), parameter);

    /// <summary>The value, when it is not null.</summary>
    /// <param name="value">The value.</param>
    /// <param name="parameter">The parameter's name.</param>
    /// <exception cref="ArgumentNullException">It is null.</exception>
    public static T Given<T>(T? value, string parameter)
        where T : class => value ?? throw new ArgumentNullException(parameter);

    /// <summary>
    /// The text, when it is of one line: a name of two could make a second line in what is said of it.
    /// </summary>
    /// <param name="value">The text; may be empty.</param>
    /// <param name="what">What it is, such as <c>resin</c>.</param>
    /// <param name="parameter">The parameter's name.</param>
    /// <exception cref="ArgumentException">It is null, or holds a line end.</exception>
    public static string OneLine(string value, string what, string parameter) =>
        Given(value, parameter).AsSpan().IndexOfAny('\n', '\r') is var at and >= 0
            ? throw new ArgumentException(
                FormattableString.Invariant(
                    $"The {what} must be of one line, without a line end at position {at + 1}."
                ),
                parameter
            )
            : value;

    private static string Sentence(string what, FormattableString limits, string unit, double value)
    {
        string space = unit.Length > 0 ? " " : "";
        return FormattableString.Invariant(
            $"The {what} must be {FormattableString.Invariant(limits)}{space}{unit}, not {value}."
        );
    }
}
