namespace CalibGeom.Verification.Exposures;

/// <summary>Checks of constructor arguments with one wording.</summary>
internal static class Require
{
    /// <summary>The value, when it lies between the limits, both included.</summary>
    internal static double Within(double value, double least, double most, string what, string unit, string parameter) =>
        value >= least && value <= most
            ? value
            : throw new ArgumentException(FormattableString.Invariant($"The {what} must be {least} to {most} {unit}, not {value}.").Replace(" ,", ",", StringComparison.Ordinal), parameter);

    /// <summary>The value, when it is above 0 and at most the limit.</summary>
    internal static double Positive(double value, double most, string what, string unit, string parameter) =>
        value > 0 && value <= most
            ? value
            : throw new ArgumentException(FormattableString.Invariant($"The {what} must be above 0 and at most {most} {unit}, not {value}.").Replace(" ,", ",", StringComparison.Ordinal), parameter);
}
