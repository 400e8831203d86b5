using SkiaSharp;

namespace CalibGeom.Pictures.Drawings;

/// <summary>The one font of all pictures, from this assembly's resources.</summary>
public static class TextFont
{
    private static readonly SKTypeface Typeface = Load();

    /// <summary>The width of a text.</summary>
    /// <param name="text">A line of text.</param>
    /// <param name="style">How it is set; 13 pixels by default.</param>
    /// <returns>Pixels.</returns>
    public static double Width(string text, TextStyle? style = null)
    {
        ArgumentNullException.ThrowIfNull(text);
        style ??= new TextStyle();
        using SKFont font = Create(style.Size, style.Bold);
        return font.MeasureText(text);
    }

    internal static SKFont Create(double size, bool bold) =>
        new(Typeface, (float)size)
        {
            Edging = SKFontEdging.Antialias,
            Hinting = SKFontHinting.None,
            Subpixel = true,
            Embolden = bold,
        };

    private static SKTypeface Load()
    {
        using Stream resource =
            typeof(TextFont).Assembly.GetManifestResourceStream("DejaVuSans.ttf")
            ?? throw new InvalidOperationException("The font DejaVuSans.ttf is missing from the assembly.");
        return SKTypeface.FromStream(resource);
    }
}
