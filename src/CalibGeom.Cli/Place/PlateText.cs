using System.Globalization;

namespace CalibGeom.Cli.Place;

/// <summary>A plate's size as every command's <c>--plate</c> takes it: <c>150x90</c> or <c>150x90x160</c>.</summary>
internal static class PlateText
{
    internal const string Help = "WIDTHxDEPTH[xHEIGHT]";

    /// <summary>Width, depth and, where given, height, mm.</summary>
    /// <exception cref="InputException">No such text, or a number out of range.</exception>
    internal static double[] Parse(string text)
    {
        double[] size = text.Split('x', 'X').Select(Number).ToArray();
        return size.Length is 2 or 3
            ? size
            : throw new InputException(
                InputIds.Option,
                $"--plate {text}: give width and depth, and the height if it matters, such as 150x90 or 150x90x160."
            );
    }

    private static double Number(string text) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double value)
        && value is >= 1 and <= 1000
            ? value
            : throw new InputException(
                InputIds.Option,
                $"--plate: \"{text}\" is not a number from 1 to 1000. Give a size in mm such as 150x90 or "
                    + $"150x90x160, with a point for decimals."
            );
}
