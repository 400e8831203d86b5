using System.Globalization;
using CalibGeom.Cli.Shared;
using CalibGeom.Verification.Clearances;
using CalibGeom.Verification.Decisions;

namespace CalibGeom.Cli.Predict;

/// <summary>What a command line asks of <c>predict</c>.</summary>
internal sealed record PredictRequest
{
    internal required IReadOnlyList<string> Paths { get; init; }

    /// <summary>The object that readings are of.</summary>
    internal required Func<string?, FoundObject> Find { get; init; }

    internal string? Coupon { get; init; }

    internal string? For { get; init; }

    internal double? Want { get; init; }

    internal string? Limits { get; init; }

    internal double? BetweenPrints { get; init; }

    internal bool OnePrint { get; init; }

    internal PerAxis? Pixel { get; init; }

    /// <summary>Readings of one print that stand on the command line.</summary>
    internal IReadOnlyList<string> Given { get; init; } = [];

    internal string? Thresholds { get; init; }

    internal bool GreyLevels { get; init; }

    internal bool MonteCarlo { get; init; }

    internal bool Budget { get; init; }

    /// <summary>Where the page to file goes, or null.</summary>
    internal string? Report { get; init; }

    internal bool Json { get; init; }

    /// <summary>Peg and hole of <c>--for 20/20.2</c> or <c>--for 12H7/g6</c>.</summary>
    /// <exception cref="InputException">They cannot be read.</exception>
    internal WantedJoint? Joint()
    {
        if (For is null)
            return null;
        try
        {
            if (IsoJoint.Parse(For) is { } iso)
                return new WantedJoint(iso.Peg, iso.Hole, iso);
        }
        catch (ArgumentException e)
        {
            throw InputException.Because(InputIds.Option, e, "--for: ");
        }
        return Pair(For) is var (peg, hole)
            ? new WantedJoint(peg, hole, null)
            : throw new InputException(
                InputIds.Option,
                $"--for is \"{For}\"; write peg and hole in mm with decimal points, such as --for 20/20.2, or an ISO 286 "
                    + "fit with a hole H, such as --for 12H7/g6."
            );
    }

    /// <exception cref="InputException">A value is out of range.</exception>
    internal PredictionOptions Options(double? pitch)
    {
        try
        {
            return new PredictionOptions
            {
                PixelPitch = Pixel is { } p ? Math.Max(p.X, p.Y) : pitch,
                BetweenPrints = BetweenPrints,
                Limits = Tolerance(),
                GreyLevels = GreyLevels,
                Route = MonteCarlo ? Route.MonteCarlo : Route.FirstOrder,
                Thresholds = ThresholdText.Read(Thresholds),
            };
        }
        catch (ArgumentException e)
        {
            throw InputException.Because(InputIds.Option, e);
        }
    }

    private ToleranceLimits? Tolerance()
    {
        if (Limits is null)
            return null;
        return Pair(Limits) is var (low, high) && low < high
            ? new ToleranceLimits(low, high)
            : throw new InputException(
                InputIds.Option,
                $"--limits is \"{Limits}\"; write the least and then the most clearance per side in mm, such as 0.02/0.07."
            );
    }

    private static (double First, double Second)? Pair(string text)
    {
        string[] parts = text.Split('/');
        return parts.Length == 2 && Number(parts[0]) is { } first && Number(parts[1]) is { } second
            ? (first, second)
            : null;
    }

    private static double? Number(string text) =>
        double.TryParse(
            text,
            NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint,
            CultureInfo.InvariantCulture,
            out double value
        )
            ? value
            : null;
}
