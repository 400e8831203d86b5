using System.Globalization;

namespace CalibGeom.Cli.Shared;

/// <summary>
/// A pixel pitch as every command's <c>--pixel</c> takes it: <c>0.04</c>, or <c>0.03,0.04</c> for X and Y.
/// </summary>
internal static class PixelText
{
    internal const string Help = "P[,Q]";

    /// <exception cref="InputException">No such text, or a number out of range.</exception>
    internal static PerAxis Parse(string text, double least, double most)
    {
        double[] values = text.Split(',').Select(Number).ToArray();
        return values.Length switch
        {
            1 => values[0],
            2 => new PerAxis(values[0], values[1]),
            _ => throw new InputException(
                InputIds.Option,
                $"--pixel {text}: give one number, or two for X and Y such as 0.03,0.04."
            ),
        };

        double Number(string part) =>
            double.TryParse(part, NumberStyles.Float, CultureInfo.InvariantCulture, out double value)
            && value >= least
            && value <= most
                ? value
                : throw new InputException(
                    InputIds.Option,
                    FormattableString.Invariant(
                        $"--pixel {text} cannot be read: \"{part}\" is not a number from {least} to {most}. Give millimetres with a decimal point, such as 0.04 or 0.03,0.04 for X and Y."
                    )
                );
    }
}
