using CalibGeom.Pictures.Drawings;
using CalibGeom.Pictures.Objects;

namespace CalibGeom.Pictures.Reports;

/// <summary>
/// A card for the machine, A6, long side level: the numbers to print with and what they give. Immutable.
/// </summary>
public sealed record SettingsCard
{
    private const double Width = 148,
        Height = 105,
        Margin = 8;

    /// <summary>Another font's bold letters may be wider than those measured.</summary>
    private const double BoldRoom = 0.85;

    /// <summary>The resin.</summary>
    public required string Resin { get; init; }

    /// <summary>The printer.</summary>
    public required string Printer { get; init; }

    /// <summary>What to type: a name and a value with its unit each; the first four are drawn large.</summary>
    public required IReadOnlyList<KeyValuePair<string, string>> Settings { get; init; }

    /// <summary>What they give, such as the clearance of a joint; a name and a value each.</summary>
    public IReadOnlyList<KeyValuePair<string, string>> Results { get; init; } = [];

    /// <summary>Draws the card; the date is left for the pen.</summary>
    public Drawing Draw()
    {
        double k = Sheet.PixelsPerMm;
        var drawing = new Drawing(Width * k, Height * k, $"Settings for {Resin} on {Printer}");
        void Text(double x, double y, string text, TextStyle style, double room)
        {
            double wide = Sheet.Measure(text, style.Size, style.Bold);
            double size = wide > room ? style.Size * room / wide : style.Size;
            drawing.Text(x * k, y * k, text, style with { Size = size * k });
        }

        drawing.Rectangle(3 * k, 3 * k, (Width - 6) * k, (Height - 6) * k, null, new Pen(Ink.Dark, 0.4 * k));
        Text(Margin, 14, Resin, new TextStyle(6.5, Bold: true), Width - 2 * Margin);
        Text(Margin, 21, $"on {Printer}", new TextStyle(4), Width - 2 * Margin);
        double column = (Width - 2 * Margin) / 2;
        for (int i = 0; i < Math.Min(4, Settings.Count); i++)
        {
            double x = Margin + i % 2 * column,
                y = 31 + i / 2 * 16;
            Text(x, y, Settings[i].Key, new TextStyle(3.2) { Ink = Ink.Muted }, column - 3);
            // The number large; what is said of it in brackets small below.
            string value = Settings[i].Value;
            int bracket = value.IndexOf('(', StringComparison.Ordinal);
            string number = bracket > 0 ? value[..bracket].TrimEnd() : value,
                said = bracket > 0 ? value[bracket..] : "";
            Text(x, y + 7.5, number, new TextStyle(7, Bold: true) { Ink = Ink.Blue }, (column - 3) * BoldRoom);
            Text(x, y + 11, said, new TextStyle(2.8) { Ink = Ink.Muted }, column - 3);
        }
        KeyValuePair<string, string>[] rest = [.. Settings.Skip(4), .. Results];
        for (int i = 0; i < Math.Min(8, rest.Length); i++)
        {
            double x = Margin + i % 2 * column,
                y = 63 + i / 2 * 5.2;
            Text(x, y, rest[i].Key, new TextStyle(3) { Ink = Ink.Muted }, 30);
            Text(x + 31, y, rest[i].Value, new TextStyle(3.4), column - 33);
        }
        drawing.Line(Margin * k, 84 * k, (Width - Margin) * k, 84 * k, new Pen(Ink.Muted, 0.2 * k));
        Text(
            Margin,
            90,
            "date ______________   by ______________   look again on ______________",
            new TextStyle(3.2),
            Width - 2 * Margin
        );
        Text(
            Margin,
            96,
            "Look again with a new bottle, film or screen, and when a witness coupon has left its limits. Sizes are estimates.",
            new TextStyle(2.6) { Ink = Ink.Muted },
            Width - 2 * Margin
        );
        return drawing;
    }
}
