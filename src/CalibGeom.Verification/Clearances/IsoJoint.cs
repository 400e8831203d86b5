using System.Globalization;
using System.Text.RegularExpressions;
using CalibGeom.Verification.Decisions;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Clearances;

/// <summary>
/// A peg and a hole of an ISO 286 fit, each designed to the middle of its tolerance zone, and the clearances the fit
/// allows. Immutable.
/// </summary>
public sealed partial record IsoJoint
{
    private IsoJoint(double nominal, IsoFit fit)
    {
        Nominal = nominal;
        Fit = fit;
        Interval shaft = Iso286.Shaft(fit.Shaft, fit.ShaftGrade, nominal),
            clearance = fit.Clearance(nominal);
        Peg = nominal + (shaft.Low + shaft.High) / 2;
        Hole = nominal + Iso286.Tolerance(fit.HoleGrade, nominal) / 2;
        Limits = new ToleranceLimits(clearance.Low / 2, clearance.High / 2);
    }

    /// <summary>Nominal size, mm.</summary>
    public double Nominal { get; }

    /// <summary>The fit.</summary>
    public IsoFit Fit { get; }

    /// <summary>Middle of the shaft's tolerance zone, mm.</summary>
    public double Peg { get; }

    /// <summary>Middle of the hole's tolerance zone, mm.</summary>
    public double Hole { get; }

    /// <summary>Least and most clearance per side, mm.</summary>
    public ToleranceLimits Limits { get; }

    /// <summary>The joint that a text names, or null when it is no such text.</summary>
    /// <param name="text">Such as <c>12H7/g6</c>: nominal size, hole, shaft.</param>
    /// <exception cref="ArgumentException">The size or the shaft is not in the tables.</exception>
    public static IsoJoint? Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        Match match = Form().Match(text);
        return match.Success
            ? new IsoJoint(
                double.Parse(match.Groups["size"].Value, CultureInfo.InvariantCulture),
                new IsoFit(
                    $"H{match.Groups["hole"].Value}/{match.Groups["letter"].Value}{match.Groups["shaft"].Value}",
                    int.Parse(match.Groups["hole"].Value, CultureInfo.InvariantCulture),
                    match.Groups["letter"].Value[0],
                    int.Parse(match.Groups["shaft"].Value, CultureInfo.InvariantCulture)
                )
            )
            : null;
    }

    [GeneratedRegex(@"^\s*(?<size>\d+(\.\d+)?)\s*H(?<hole>\d{1,2})/(?<letter>[a-z])(?<shaft>\d{1,2})\s*$")]
    private static partial Regex Form();
}
