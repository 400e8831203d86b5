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

    private static string Sentence(string what, FormattableString limits, string unit, double value)
    {
        string space = unit.Length > 0 ? " " : "";
        return FormattableString.Invariant(
            $"The {what} must be {FormattableString.Invariant(limits)}{space}{unit}, not {value}."
        );
    }
}
