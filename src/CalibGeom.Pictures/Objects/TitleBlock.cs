using CalibGeom.Pictures.Drawings;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Pictures.Objects;

/// <summary>What the drawing shows, and room for what the workshop knows; a bar to check the print by.</summary>
internal static class TitleBlock
{
    /// <summary>How long the bar is, mm of paper.</summary>
    internal const double Bar = 50;

    /// <summary>How high the block is, mm.</summary>
    internal const double Height = 38;

    private const double Line = 5;

    internal static void Draw(Sheet sheet, Room room, TestObject made, string name)
    {
        string title = made.Spec.Title.Length > 0 ? $"{name}: {made.Spec.Title}" : name;
        string[] lines =
        [
            $"digest {SpecDigest.Of(made.Spec)}",
            made.Spec.Process is { } p
                ? FormattableString.Invariant(
                    $"pixel {Pitch(p.PixelPitch)} mm, layer {p.LayerHeight:0.###} mm, {p.BaseLayers} base layers"
                )
                : "process not given: no pixels, no layers",
            made.Spec.Tilt.Angle == 0
                ? "stands level; lengths in mm, third-angle projection"
                : FormattableString.Invariant(
                    $"printed tilted {made.Spec.Tilt.Angle:0.##} deg about {made.Spec.Tilt.Axis}; drawn level, mm"
                ),
        ];
        string[] blanks = ["date", "trial", "resin", "printer"];
        var block = new Room(room.X, room.Bottom - Height, room.Width, Height);
        sheet.Border(block);
        double y = block.Y + 4;
        sheet.TryFit(block.X + 2, y, $"Test object {title}", new TextStyle(3.2, Bold: true), block.Width - 4);
        foreach (string line in lines)
            sheet.TryFit(block.X + 2, y += Line - 0.6, line, new TextStyle(Sheet.TextSize), block.Width - 4);
        for (int i = 0; i < blanks.Length; i++)
        {
            double x = block.X + 2 + i % 2 * (block.Width / 2 - 1);
            if (i % 2 == 0)
                y += Line;
            sheet.TryText(x, y, blanks[i], new TextStyle(2.1) { Ink = Ink.Muted });
            sheet.Line((x + 10, y + 0.4), (x + block.Width / 2 - 5, y + 0.4), "blank");
        }
        DrawBar(sheet, block.X + 2, y + 4);
    }

    /// <summary>The full caution, in lines as wide as the sheet.</summary>
    internal static void Caution(Sheet sheet, Room room)
    {
        double y = room.Y + 1.4;
        foreach (string line in Wrap(SafetyText.Full, room.Width, 1.9))
        {
            sheet.TryText(room.X, y, line, new TextStyle(1.9) { Ink = Ink.Muted });
            y += 2.5;
        }
    }

    private static void DrawBar(Sheet sheet, double x, double y)
    {
        (double x0, double y0) = Sheet.Px((x, y));
        sheet.Drawing.Rectangle(x0, y0, Bar * Sheet.PixelsPerMm, 1.2 * Sheet.PixelsPerMm, Ink.Dark);
        (x0, y0) = Sheet.Px((x + Bar / 2, y + 0.2));
        sheet.Drawing.Rectangle(x0, y0, (Bar / 2 - 0.2) * Sheet.PixelsPerMm, 0.8 * Sheet.PixelsPerMm, Ink.Paper);
        sheet.TryText(
            x,
            y + 3.4,
            FormattableString.Invariant($"{Bar:0} mm when printed at 100 %"),
            new TextStyle(2.1) { Ink = Ink.Muted }
        );
    }

    private static IEnumerable<string> Wrap(string text, double width, double size)
    {
        string line = "";
        foreach (string word in text.Split(' '))
        {
            string longer = line.Length == 0 ? word : $"{line} {word}";
            if (line.Length > 0 && Sheet.Measure(longer, size) > width)
            {
                yield return line;
                longer = word;
            }
            line = longer;
        }
        yield return line;
    }

    private static string Pitch(PerAxis pitch) =>
        pitch.IsUniform
            ? FormattableString.Invariant($"{pitch.X:0.####}")
            : FormattableString.Invariant($"{pitch.X:0.####} x {pitch.Y:0.####}");
}
