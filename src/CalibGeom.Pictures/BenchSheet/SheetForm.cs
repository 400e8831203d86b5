using System.Globalization;
using System.Text;
using CalibGeom.Pictures.Objects;
using CalibGeom.Pictures.Reports;
using CalibGeom.TestObjects;

namespace CalibGeom.Pictures.BenchSheet;

/// <summary>The body of the sheet: cautions, object, conditions, then rows in the order of work.</summary>
internal static class SheetForm
{
    internal static void Write(StringBuilder html, TestObject made)
    {
        html.Append("<section class=\"caution\" aria-labelledby=\"caution\"><h2 id=\"caution\">Caution</h2><ul>\n");
        foreach (string sentence in SafetyText.Sentences)
            html.Append(CultureInfo.InvariantCulture, $"<li>{HtmlText.Escape(sentence)} </li>\n");
        html.Append("</ul></section>\n")
            .Append("<section class=\"object\" aria-label=\"The object\">\n")
            .Append("<canvas id=\"object\" tabindex=\"0\" role=\"img\" aria-describedby=\"named\" ")
            .Append(
                "aria-label=\"The object in 3D. Arrow keys turn it, plus and minus bring it nearer or farther.\"></canvas>\n"
            )
            .Append("<div class=\"bar\"><p id=\"named\" role=\"status\"></p>")
            .Append("<button type=\"button\" id=\"nearer\" aria-label=\"nearer\">+</button>")
            .Append("<button type=\"button\" id=\"farther\" aria-label=\"farther\">\u2212</button></div></section>\n")
            .Append("<form id=\"sheet\" autocomplete=\"off\" novalidate>\n");
        Conditions(html);
        html.Append("<div class=\"columns\">\n");
        for (int step = 0; step < WorkOrder.Steps.Length; step++)
            Step(html, made, step);
        html.Append("</div>\n<label class=\"notes\">Notes <input type=\"text\" name=\"notes\"></label>\n")
            .Append("<div class=\"actions\"><button type=\"submit\" class=\"main\">Save the readings file</button>")
            .Append("<button type=\"button\" id=\"print\">Print</button>")
            .Append("<button type=\"button\" id=\"fresh\">Empty the sheet</button></div>\n")
            .Append("<p id=\"said\" role=\"status\" class=\"screen\"></p>\n</form>\n");
    }

    private static void Conditions(StringBuilder html)
    {
        html.Append("<fieldset class=\"before\"><legend>The print</legend><div class=\"conditions\">\n");
        foreach ((string word, string label, bool number) in SheetWords.Settings)
            Field(html, word, label, number);
        html.Append("</div></fieldset>\n<fieldset class=\"before\"><legend>The part and the caliper</legend>")
            .Append("<div class=\"conditions\">\n");
        Field(html, "temperature", "Temperature, \u00b0C", true);
        Field(html, "resolution", "Caliper shows steps of, mm", true, "0.01");
        Field(html, "mpe", "Its permissible error, mm", true, "0.02");
        Field(html, "expansion", "Expansion of the resin, 1/K", true);
        html.Append("</div>");
        Choice(html, "material", "Material of the part", SheetWords.Materials);
        Choice(html, "state", "State of the part", SheetWords.States);
        html.Append("</fieldset>\n");
    }

    private static void Choice(StringBuilder html, string name, string label, (string Word, string Meaning)[] words)
    {
        html.Append(
            CultureInfo.InvariantCulture,
            $"<div role=\"radiogroup\" aria-label=\"{label}\" class=\"choices\">\n"
        );
        foreach ((string word, string meaning) in words)
            html.Append(
                CultureInfo.InvariantCulture,
                $"<label><input type=\"radio\" name=\"{name}\" value=\"{word}\"> {HtmlText.Escape(meaning)}</label>\n"
            );
        html.Append("</div>");
    }

    private static void Field(StringBuilder html, string name, string label, bool number, string value = "")
    {
        string mode = number ? " inputmode=\"decimal\"" : "",
            given = value.Length > 0 ? $" value=\"{value}\"" : "";
        html.Append(
            CultureInfo.InvariantCulture,
            $"<label>{HtmlText.Escape(label)} <input type=\"text\" name=\"{name}\"{mode}{given}></label>\n"
        );
    }

    private static void Step(StringBuilder html, TestObject made, int step)
    {
        Feature[] features = [.. WorkOrder.Of(step, made.Features)];
        if (features.Length == 0)
            return;
        (string title, string note, _, _) = WorkOrder.Steps[step];
        if (step == 0 && made.Features.Find(KnownFeatures.SqueezeOpen) is not null)
            note = "Off the plate: scraper in on the squeeze tab's side. " + note;
        // What measuring may break is folded away, and left off the paper, which has room for one page.
        bool last = step == WorkOrder.Steps.Length - 1;
        html.Append(
                CultureInfo.InvariantCulture,
                $"<fieldset{(last ? " class=\"screen\"" : "")}><legend>{step + 1}. {HtmlText.Escape(title)}</legend>"
            )
            .Append(CultureInfo.InvariantCulture, $"<p class=\"muted\">{HtmlText.Escape(note)}</p>\n")
            .Append(last ? "<details><summary>Show the rows</summary>\n" : "");
        if (features.Any(f => f.Unit == "stage"))
            SheetMaps.Columns(html, made);
        foreach (Feature feature in features)
            switch (feature.Unit)
            {
                case "mm":
                    Size(html, feature);
                    break;
                case "count":
                    SheetMaps.Openings(html, feature);
                    break;
                case "fit":
                    Fit(html, feature);
                    break;
            }
        html.Append(last ? "</details></fieldset>\n" : "</fieldset>\n");
    }

    internal static void Head(StringBuilder html, string kind, Feature feature)
    {
        string id = HtmlText.Escape($"{feature.Id}"),
            part = HtmlText.Escape(ObjectParts.PartOf(feature.Id));
        html.Append(
                CultureInfo.InvariantCulture,
                $"<div class=\"row {kind}\" data-feature=\"{id}\" data-part=\"{part}\"><div class=\"what\"><b>{id}</b>"
            )
            .Append(
                CultureInfo.InvariantCulture,
                $" <span class=\"how\">{HtmlText.Escape(feature.How)}</span></div>\n"
            );
    }

    private static void Size(StringBuilder html, Feature feature)
    {
        string id = HtmlText.Escape($"{feature.Id}");
        Head(html, "size", feature);
        html.Append("<div class=\"fields\">");
        for (int i = 1; i <= 3; i++)
            html.Append(
                    CultureInfo.InvariantCulture,
                    $"<input type=\"text\" class=\"reading\" inputmode=\"decimal\" name=\"{id}#{i}\" "
                )
                .Append(CultureInfo.InvariantCulture, $"aria-label=\"{id}, reading {i}, mm\">");
        html.Append(
                CultureInfo.InvariantCulture,
                $"<button type=\"button\" class=\"repeat\" aria-label=\"one more reading of {id}\">+</button>"
            )
            .Append(
                CultureInfo.InvariantCulture,
                $"<input type=\"text\" class=\"note\" name=\"{id}#note\" placeholder=\"note\" aria-label=\"note on {id}\"></div>"
            )
            .Append("<p class=\"slip\" role=\"status\"></p></div>\n");
    }

    private static void Fit(StringBuilder html, Feature feature)
    {
        string id = HtmlText.Escape($"{feature.Id}");
        Head(html, "fit", feature);
        html.Append(CultureInfo.InvariantCulture, $"<div class=\"choices\" role=\"radiogroup\" aria-label=\"{id}\">");
        foreach ((string word, string test) in SheetWords.Fits)
            html.Append(
                CultureInfo.InvariantCulture,
                $"<label><input type=\"radio\" name=\"{id}\" value=\"{word}\"> <b>{word}</b>: {HtmlText.Escape(test)}</label>"
            );
        html.Append("</div></div>\n");
    }
}
