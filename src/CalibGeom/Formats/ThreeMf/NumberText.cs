using System.Globalization;
using CalibGeom.Meshes;

namespace CalibGeom.Formats.ThreeMf;

/// <summary>
/// Numbers as the 3MF schema writes them: no NaN, no infinity, no comma, no point without a digit after it.
/// </summary>
internal static class NumberText
{
    internal static bool TryNumber(ReadOnlySpan<char> text, out double value)
    {
        const NumberStyles style =
            NumberStyles.AllowLeadingSign
            | NumberStyles.AllowDecimalPoint
            | NumberStyles.AllowExponent
            | NumberStyles.AllowLeadingWhite
            | NumberStyles.AllowTrailingWhite;
        if (!double.TryParse(text, style, CultureInfo.InvariantCulture, out value) || !double.IsFinite(value))
            return false;
        int point = text.IndexOf('.');
        return point < 0 || (point + 1 < text.Length && char.IsAsciiDigit(text[point + 1]));
    }

    /// <summary>A whole number of 0 to 2^31 - 1.</summary>
    internal static bool TryIndex(ReadOnlySpan<char> text, out int value) =>
        int.TryParse(
            text,
            NumberStyles.AllowLeadingWhite | NumberStyles.AllowTrailingWhite,
            CultureInfo.InvariantCulture,
            out value
        );

    /// <summary>Twelve numbers: the images of the x, y and z axes and of the origin.</summary>
    internal static Affine3D? Transform(string text)
    {
        string[] words = text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries);
        if (words.Length != 12)
            return null;
        var m = new double[12];
        for (int i = 0; i < 12; i++)
            if (!TryNumber(words[i], out m[i]))
                return null;
        return new(new(m[0], m[1], m[2]), new(m[3], m[4], m[5]), new(m[6], m[7], m[8]), new(m[9], m[10], m[11]));
    }
}
