using System.Globalization;
using System.Text;
using CalibGeom.Pictures.Objects;
using CalibGeom.Pictures.Reports;
using CalibGeom.TestObjects;

namespace CalibGeom.Pictures.BenchSheet;

/// <summary>Maps to tap: the block of columns from above, and the openings of comb and tab.</summary>
internal static class SheetMaps
{
    internal static void Columns(StringBuilder html, TestObject made)
    {
        int rows = made.Columns.Max(c => c.Row),
            places = made.Columns.Max(c => c.Place);
        html.Append("<div class=\"row\"><div class=\"what\"><b>columns</b> <span class=\"how\">")
            .Append("The last stage at which each stood; tap to go through: ")
            .Append(HtmlText.Escape(string.Join("; ", SheetWords.Stages.Select(s => $"{s.Word} = {s.Meaning}"))))
            .Append(".</span></div>\n")
            .Append(
                "<p class=\"paper\">Write into each: L lost while printing, P stood on the plate, W stood after the "
            )
            .Append("wash, C stood after post-cure.</p>\n")
            .Append(
                CultureInfo.InvariantCulture,
                $"<div class=\"map\" style=\"grid-template-columns: repeat({places}, minmax(0, 1fr))\">\n"
            );
        for (int row = rows; row >= 1; row--)
        for (int place = 1; place <= places; place++)
            if (made.Columns.FirstOrDefault(c => c.Row == row && c.Place == place) is { } column)
                Cell(html, column);
            else
                html.Append("<span></span>\n");
        html.Append("</div><p class=\"muted\">front</p>")
            .Append("<button type=\"button\" id=\"standing\" class=\"screen\">All others stood</button></div>\n");
    }

    private static void Cell(StringBuilder html, ColumnPlan column)
    {
        string diameter = SizeText.Of(column.Diameter);
        // The name that is read aloud is all of the text; what the eye sees from the place is hidden from it.
        html.Append(
                CultureInfo.InvariantCulture,
                $"<button type=\"button\" class=\"column\" data-cell=\"column{column.Number}.stood\" "
            )
            .Append(CultureInfo.InvariantCulture, $"data-part=\"column{column.Number}\" data-value=\"\">")
            .Append(
                CultureInfo.InvariantCulture,
                $"<span class=\"aloud\">column </span><b>{column.Number}</b> {diameter} "
            )
            .Append(
                CultureInfo.InvariantCulture,
                $"<span class=\"aloud\">mm, row {column.Row} from the front, place {column.Place}: </span>"
            )
            .Append("<span class=\"word\">\u2013</span></button>\n");
    }

    internal static void Openings(StringBuilder html, Feature count)
    {
        string id = HtmlText.Escape($"{count.Id}");
        SheetForm.Head(html, "openings", count);
        double[] heights = [.. count.Openings];
        int many = (int)count.Nominal;
        html.Append("<p class=\"paper\">Tick what light comes through.</p>\n")
            .Append(
                CultureInfo.InvariantCulture,
                $"<div class=\"map\" style=\"grid-template-columns: repeat({Math.Min(many, 8)}, minmax(0, 1fr))\">"
            );
        for (int i = 1; i <= many; i++)
        {
            string height = heights.Length == many ? $" {SizeText.Of(heights[i - 1])}" : "";
            html.Append(
                    CultureInfo.InvariantCulture,
                    $"<button type=\"button\" class=\"opening\" data-cell=\"{id}#{i}\" data-value=\"\">"
                )
                .Append(CultureInfo.InvariantCulture, $"<span class=\"aloud\">{id}, number </span><b>{i}</b>{height} ")
                .Append("<span class=\"word\">\u2013</span></button>");
        }
        html.Append("</div><div class=\"fields screen\">")
            .Append("<button type=\"button\" data-openings=\"open\">All open</button>")
            .Append("<button type=\"button\" data-openings=\"closed\">All closed</button>")
            .Append("<span class=\"count\" role=\"status\"></span></div></div>\n");
    }
}
