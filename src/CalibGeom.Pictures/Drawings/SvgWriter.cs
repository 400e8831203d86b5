using System.Globalization;
using System.Text;

namespace CalibGeom.Pictures.Drawings;

/// <summary>SVG as plain lines of text: the same drawing gives the same bytes.</summary>
internal static class SvgWriter
{
    internal static void Write(Drawing drawing, Stream stream)
    {
        using var writer = new StreamWriter(stream, new UTF8Encoding(false), leaveOpen: true) { NewLine = "\n" };
        string width = Number(drawing.Width),
            height = Number(drawing.Height);
        writer.WriteLine(
            $"<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{width}\" height=\"{height}\" viewBox=\"0 0 "
                + $"{width} {height}\" font-family=\"'DejaVu Sans', Verdana, sans-serif\">"
        );
        if (drawing.Title.Length > 0)
            writer.WriteLine($"<title>{Escape(drawing.Title)}</title>");
        if (drawing.Ground is { } ground)
            writer.WriteLine($"<rect width=\"{width}\" height=\"{height}\" fill=\"{ground}\"/>");
        int clips = 0;
        foreach (Shape shape in drawing.Shapes)
            Write(writer, shape, ref clips);
        writer.WriteLine("</svg>");
    }

    private static void Write(StreamWriter writer, Shape shape, ref int clips)
    {
        switch (shape)
        {
            case PathShape path:
                writer.WriteLine(
                    $"<path{Class(path)} d=\"{Data(path)}\"{Rule(path)}{Fill(path.Fill)}{Stroke(path.Pen)}/>"
                );
                break;
            case DiscShape disc:
                writer.WriteLine(
                    $"<circle cx=\"{Number(disc.X)}\" cy=\"{Number(disc.Y)}\" "
                        + $"r=\"{Number(disc.Radius)}\"{Fill(disc.Fill)}{Stroke(disc.Pen)}/>"
                );
                break;
            case TextShape text:
                writer.WriteLine(Text(text));
                break;
            case ImageShape image:
                writer.WriteLine(
                    $"<image x=\"{Number(image.X)}\" y=\"{Number(image.Y)}\" width=\"{Number(image.Width)}\" "
                        + $"height=\"{Number(image.Height)}\" "
                        + $"href=\"data:image/png;base64,{Convert.ToBase64String(image.Png)}\"/>"
                );
                break;
            case ClipShape clip:
                string id = $"clip{++clips}";
                writer.WriteLine(
                    $"<clipPath id=\"{id}\"><rect x=\"{Number(clip.X)}\" y=\"{Number(clip.Y)}\" "
                        + $"width=\"{Number(clip.Width)}\" height=\"{Number(clip.Height)}\"/></clipPath>"
                );
                writer.WriteLine($"<g clip-path=\"url(#{id})\">");
                foreach (Shape inner in clip.Shapes)
                    Write(writer, inner, ref clips);
                writer.WriteLine("</g>");
                break;
        }
    }

    private static string Data(PathShape path)
    {
        var data = new StringBuilder();
        foreach (var line in path.Lines)
        {
            for (int i = 0; i < line.Length; i++)
                data.Append(i == 0 ? "M" : "L").Append(Number(line[i].X)).Append(' ').Append(Number(line[i].Y));
            if (path.Closed)
                data.Append('Z');
        }
        return data.ToString();
    }

    private static string Class(PathShape path) => path.Role.Length > 0 ? $" class=\"{Escape(path.Role)}\"" : "";

    private static string Rule(PathShape path) =>
        path.Fill is not null && path.Lines.Length > 1 ? " fill-rule=\"evenodd\"" : "";

    private static string Text(TextShape text)
    {
        string anchor = text.Style.Anchor switch
        {
            TextAnchor.Start => "",
            TextAnchor.Middle => " text-anchor=\"middle\"",
            _ => " text-anchor=\"end\"",
        };
        string bold = text.Style.Bold ? " font-weight=\"bold\"" : "";
        string turn =
            text.Style.Turn != 0
                ? $" transform=\"rotate({Number(-text.Style.Turn)} {Number(text.X)} {Number(text.Y)})\""
                : "";
        string feature = text.Style.Feature.Length > 0 ? $" data-feature=\"{Escape(text.Style.Feature)}\"" : "";
        return $"<text{feature} x=\"{Number(text.X)}\" y=\"{Number(text.Y)}\" "
            + $"font-size=\"{Number(text.Style.Size)}\"{anchor}{bold}{turn}{Fill(text.Style.Ink)}>"
            + $"{Escape(text.Text)}</text>";
    }

    private static string Fill(Ink? fill) =>
        fill is { } ink
            ? $" fill=\"{ink}\"" + (ink.Opacity < 1 ? $" fill-opacity=\"{Number(ink.Opacity)}\"" : "")
            : " fill=\"none\"";

    private static string Stroke(Pen? pen)
    {
        if (pen is null)
            return "";
        string stroke = $" stroke=\"{pen.Ink}\" stroke-width=\"{Number(pen.Width)}\" stroke-linejoin=\"round\"";
        if (pen.Ink.Opacity < 1)
            stroke += $" stroke-opacity=\"{Number(pen.Ink.Opacity)}\"";
        return pen.Dash > 0 ? stroke + $" stroke-dasharray=\"{Number(pen.Dash)}\"" : stroke;
    }

    private static string Number(double value)
    {
        double rounded = Math.Round(value, 2);
        return (rounded == 0 ? 0 : rounded).ToString("0.##", CultureInfo.InvariantCulture);
    }

    private static string Escape(string text) =>
        string.Concat(text.Where(c => System.Xml.XmlConvert.IsXmlChar(c) || char.IsSurrogate(c)))
            .Replace("&", "&amp;", StringComparison.Ordinal)
            .Replace("<", "&lt;", StringComparison.Ordinal)
            .Replace(">", "&gt;", StringComparison.Ordinal)
            .Replace("\"", "&quot;", StringComparison.Ordinal);
}
