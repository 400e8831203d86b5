using System.Globalization;
using CalibGeom.Cli.Shared;
using CalibGeom.Verification.Clearances;

namespace CalibGeom.Cli.Predict;

/// <summary>What a command line asks of <c>predict</c>.</summary>
internal sealed record PredictRequest
{
    internal required IReadOnlyList<string> Paths { get; init; }

    internal string? Features { get; init; }

    internal string? Spec { get; init; }

    internal string? Preset { get; init; }

    internal string? Coupon { get; init; }

    internal string? For { get; init; }

    internal double? Want { get; init; }

    internal double? Pixel { get; init; }

    internal string? Thresholds { get; init; }

    internal bool GreyLevels { get; init; }

    internal bool MonteCarlo { get; init; }

    internal bool Budget { get; init; }

    /// <summary>Where the page to file goes, or null.</summary>
    internal string? Report { get; init; }

    internal bool Json { get; init; }

    /// <summary>Peg and hole of <c>--for 20/20.2</c>.</summary>
    /// <exception cref="InputException">They cannot be read.</exception>
    internal (double Peg, double Hole)? Joint()
    {
        if (For is null)
            return null;
        string[] parts = For.Split('/');
        return parts.Length == 2 && Number(parts[0]) is { } peg && Number(parts[1]) is { } hole
            ? (peg, hole)
            : throw new InputException(
                $"--for is \"{For}\"; write peg and hole in mm with decimal points, such as --for 20/20.2."
            );
    }

    /// <exception cref="InputException">A value is out of range.</exception>
    internal PredictionOptions Options(double? pitch)
    {
        try
        {
            return new PredictionOptions
            {
                PixelPitch = Pixel ?? pitch,
                GreyLevels = GreyLevels,
                Route = MonteCarlo ? Route.MonteCarlo : Route.FirstOrder,
                Thresholds = ThresholdText.Read(Thresholds),
            };
        }
        catch (ArgumentException e)
        {
            throw InputException.Because(e);
        }
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
