using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using CalibGeom.Pictures.Drawings;
using CalibGeom.Pictures.Objects;

namespace CalibGeom.Pictures.Tests.Objects;

/// <summary>
/// A drawing read back from its SVG: texts with the room they take, and thin lines by what they are for.
/// </summary>
internal sealed partial class SvgSheet
{
    internal SvgSheet(Drawing drawing)
    {
        using var stream = new MemoryStream();
        drawing.WriteSvg(stream);
        stream.Position = 0;
        Root = XDocument.Load(stream).Root!;
        Texts = [.. Root.Descendants().Where(e => e.Name.LocalName == "text").Select(Read)];
        Lines =
        [
            .. Root.Descendants()
                .Where(e => e.Name.LocalName == "path" && e.Attribute("class") is not null)
                .SelectMany(e =>
                    Segments(e.Attribute("d")!.Value).Select(s => (e.Attribute("class")!.Value, s.A, s.B))
                ),
        ];
    }

    internal XElement Root { get; }

    internal IReadOnlyList<(string Text, string Feature, Room Room)> Texts { get; }

    internal IReadOnlyList<(string Role, (double X, double Y) A, (double X, double Y) B)> Lines { get; }

    internal static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private static (string, string, Room) Read(XElement e)
    {
        double size = Number(e.Attribute("font-size")!.Value);
        bool bold = e.Attribute("font-weight") is not null,
            turned = e.Attribute("transform") is not null;
        TextAnchor anchor = e.Attribute("text-anchor")?.Value switch
        {
            "middle" => TextAnchor.Middle,
            "end" => TextAnchor.End,
            _ => TextAnchor.Start,
        };
        // Room asks for millimetres; measured in pixels everything is larger by the same factor.
        double k = Sheet.PixelsPerMm;
        Room room = Sheet.RoomOf(
            Number(e.Attribute("x")!.Value) / k,
            Number(e.Attribute("y")!.Value) / k,
            e.Value,
            new TextStyle(size / k, anchor, bold, turned ? 90 : 0)
        );
        return (e.Value, e.Attribute("data-feature")?.Value ?? "", room);
    }

    private static IEnumerable<((double X, double Y) A, (double X, double Y) B)> Segments(string data)
    {
        (double X, double Y) last = default;
        foreach (Match m in Point().Matches(data))
        {
            (double X, double Y) p = (
                Number(m.Groups[2].Value) / Sheet.PixelsPerMm,
                Number(m.Groups[3].Value) / Sheet.PixelsPerMm
            );
            if (m.Groups[1].Value == "L")
                yield return (last, p);
            last = p;
        }
    }

    [GeneratedRegex(@"([ML])(-?[\d.]+) (-?[\d.]+)")]
    private static partial Regex Point();
}
