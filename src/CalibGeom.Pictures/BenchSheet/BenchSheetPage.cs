using System.Globalization;
using System.Reflection;
using System.Text;
using System.Text.Json.Nodes;
using CalibGeom.Pictures.Objects;
using CalibGeom.Pictures.Reports;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;
using CalibGeom.Verification.Clearances;

namespace CalibGeom.Pictures.BenchSheet;

/// <summary>
/// The sheet for the bench: one HTML file that needs no network, with the object in 3D, a field for everything to read
/// in the order of work, maps to tap, and the readings file to save. Printed, it is one page with boxes for the pen.
/// </summary>
public static class BenchSheetPage
{
    /// <summary>Writes the sheet of an object as UTF-8.</summary>
    /// <param name="stream">Where to; left open.</param>
    /// <param name="made">The object.</param>
    /// <param name="name">What it is called; files saved from the sheet begin with it.</param>
    /// <exception cref="InputException">A design error leaves nothing to measure.</exception>
    public static void Write(Stream stream, TestObject made, string name)
    {
        ArgumentNullException.ThrowIfNull(stream);
        stream.Write(Encoding.UTF8.GetBytes(ToHtml(made, name)));
    }

    /// <summary>The sheet as text.</summary>
    /// <param name="made">The object.</param>
    /// <param name="name">What it is called.</param>
    /// <exception cref="InputException">A design error leaves nothing to measure.</exception>
    public static string ToHtml(TestObject made, string name)
    {
        ArgumentNullException.ThrowIfNull(made);
        ArgumentNullException.ThrowIfNull(name);
        ObjectParts parts = ObjectParts.Of(made);
        string title = made.Spec.Title.Length > 0 ? $"{name}: {made.Spec.Title}" : name;
        string digest = SpecDigest.Of(made.Spec);
        var html = new StringBuilder();
        html.Append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n")
            .Append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n")
            // Nothing may be fetched from anywhere, and no address may be called.
            .Append("<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; ")
            .Append("script-src 'unsafe-inline'; style-src 'unsafe-inline'; img-src data:\">\n")
            .Append(CultureInfo.InvariantCulture, $"<title>Bench sheet {HtmlText.Escape(title)}</title>\n")
            .Append(CultureInfo.InvariantCulture, $"<style>\n{WebFiles.Read("sheet.css")}</style>\n</head>\n<body>\n")
            .Append(CultureInfo.InvariantCulture, $"<header><h1>Bench sheet: {HtmlText.Foreign(title)}</h1>\n")
            .Append(
                CultureInfo.InvariantCulture,
                $"<p class=\"muted\">digest <code>{digest}</code>, calibgeom {HtmlText.Escape(Version)}</p></header>\n"
            )
            .Append("<main>\n");
        SheetForm.Write(html, made);
        html.Append("</main>\n<script type=\"application/json\" id=\"data\">")
            .Append(Data(made, name, digest, parts))
            .Append("</script>\n<script>\n\"use strict\";\n");
        foreach (string script in WebFiles.Scripts)
            html.Append(WebFiles.Read(script));
        return html.Append("</script>\n</body>\n</html>\n").ToString();
    }

    private static string Version { get; } =
        typeof(BenchSheetPage)
            .Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()!
            .InformationalVersion.Split('+')[0];

    /// <summary>
    /// What the script needs, as JSON in which no character can end the script element (the default encoder writes &lt;
    /// and &gt; as \u003C and \u003E).
    /// </summary>
    private static string Data(TestObject made, string name, string digest, ObjectParts parts) =>
        new JsonObject
        {
            ["name"] = name,
            ["digest"] = digest,
            ["features"] = Features(made),
            ["stages"] = new JsonArray([.. SheetWords.Stages.Select(s => new JsonObject { ["word"] = s.Word })]),
            ["settings"] = new JsonArray([
                .. SheetWords.Settings.Select(s => new JsonObject { ["word"] = s.Word, ["number"] = s.Number }),
            ]),
            ["slips"] = Slips(),
            ["mesh"] = SheetMesh.Of(parts),
        }.ToJsonString();

    /// <summary>Features as the script needs them, in the order of the table.</summary>
    internal static JsonArray Features(TestObject made) =>
        new([
            .. made.Features.Select(f => new JsonObject
            {
                ["id"] = $"{f.Id}",
                ["nominal"] = f.Nominal,
                ["unit"] = f.Unit,
                ["axis"] = f.Axis,
            }),
        ]);

    /// <summary>The rules for slips as the script needs them.</summary>
    internal static JsonObject Slips() =>
        new()
        {
            ["farShare"] = SlipRules.FarShare,
            ["farMm"] = SlipRules.FarMm,
            ["farBridgeMm"] = SlipRules.FarBridgeMm,
            ["thinBridgeMm"] = SlipRules.ThinBridgeMm,
            ["sameTolerance"] = SlipRules.SameTolerance,
            ["finestHundredths"] = SlipRules.FinestHundredths,
            ["shapes"] = new JsonArray([
                .. SlipRules.Shapes.Select(s => new JsonObject
                {
                    ["ratio"] = s.Ratio,
                    ["tolerance"] = s.Tolerance,
                    ["text"] = s.Text,
                }),
            ]),
        };
}
