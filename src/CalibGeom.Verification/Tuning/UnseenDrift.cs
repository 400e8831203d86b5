namespace CalibGeom.Verification.Tuning;

/// <summary>
/// Light that moves by an even share from print to print without a word in the log: one more parameter, the last,
/// standard normal before the data. Light is meant as that of the print to come.
/// </summary>
internal readonly struct UnseenDrift
{
    private readonly double deviation;
    private readonly int prints;

    /// <param name="deviation">Standard deviation before of the change of ln(light) a print; 0 for none.</param>
    /// <param name="prints">How many prints there are.</param>
    internal UnseenDrift(double deviation, int prints) => (this.deviation, this.prints) = (deviation, prints);

    /// <summary>A fit to steady light, with the way to make the same with light that drifts.</summary>
    /// <param name="priors">What is believed before, the drift in it.</param>
    /// <param name="fit">Makes a fit from priors; its second argument makes the one with drift, or is null.</param>
    /// <param name="cancellation">Stops the work.</param>
    internal static T Fit<T>(
        ExposurePriors priors,
        Func<ExposurePriors, Func<CancellationToken, T>?, CancellationToken, T> fit,
        CancellationToken cancellation
    ) =>
        priors.LightDrift > 0
            ? fit(priors with { LightDrift = 0 }, c => fit(priors, null, c), cancellation)
            : fit(priors, null, cancellation);

    /// <summary>How many parameters there are with it.</summary>
    internal int Dimension(int without) => without + (deviation > 0 ? 1 : 0);

    /// <summary>The change of ln(light) a print at some parameters.</summary>
    internal double At(double[] z) => deviation > 0 ? deviation * z[^1] : 0;

    /// <summary>How many prints one of them lies before the one to come; 0 where light does not drift.</summary>
    internal int Before(int print) => deviation > 0 ? prints - print : 0;
}
