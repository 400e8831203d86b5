using System.Globalization;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Cli.Shared;

/// <summary>The value of <c>--thresholds</c>, such as <c>0/0.02/0.07</c>.</summary>
internal static class ThresholdText
{
    /// <exception cref="InputException">It cannot be read.</exception>
    /// <exception cref="ArgumentException">The thresholds do not rise.</exception>
    internal static FitThresholds Read(string? text)
    {
        if (text is null)
            return FitThresholds.Default;
        double?[] values = text.Split('/').Select(Number).ToArray();
        return values is [{ } binds, { } slides, { } rattles]
            ? new FitThresholds(binds, slides, rattles)
            : throw new InputException(
                InputIds.Option,
                $"--thresholds is \"{text}\"; write where binding, sliding and rattling begin in mm, such as "
                    + $"--thresholds 0/0.02/0.07."
            );
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
