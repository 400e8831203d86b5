using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using CalibGeom.Features.Files;

namespace CalibGeom.Objects.Families;

/// <summary>
/// The table of a family, or of one part of it, as CSV and as JSON: a row for each object, by number.
/// </summary>
public static class FamilyIndex
{
    /// <summary>How each index that is written as JSON begins.</summary>
    public const string JsonBeginning = "{\"axes\":[\"";

    /// <summary>What the first line of each index that is written as CSV ends with.</summary>
    public const string CsvMark = ",file,digest,errors,warnings,triangles,volume,finding\n";

    /// <summary>What each line of a journal holds.</summary>
    public const string JournalMark = ",\"geometryVersion\":";

    /// <summary>Writes <c>number,(axes),file,digest,errors,warnings,triangles,volume,finding</c>.</summary>
    /// <param name="stream">Where to; stays open.</param>
    /// <param name="family">The family.</param>
    /// <param name="rows">The rows, by number.</param>
    public static void WriteCsv(Stream stream, ObjectFamily family, IReadOnlyList<FamilyRow> rows)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(family);
        ArgumentNullException.ThrowIfNull(rows);
        using var writer = new StreamWriter(stream, new UTF8Encoding(false), leaveOpen: true) { NewLine = "\n" };
        writer.Write(string.Join(',', ["number", .. family.Axes.Select(a => CsvText.Quote(a.Name))]) + CsvMark);
        foreach (FamilyRow row in rows)
            writer.WriteLine(
                string.Join(
                    ',',
                    [
                        Text(row.Number),
                        .. row.Values.Select(CsvText.Quote),
                        CsvText.Quote(row.File),
                        row.Digest,
                        Text(row.Errors),
                        Text(row.Warnings),
                        Text(row.Triangles),
                        row.Volume.ToString("0.###", CultureInfo.InvariantCulture),
                        CsvText.Quote(row.Finding),
                    ]
                )
            );
    }

    /// <summary>Writes <c>{"axes": [...], "count": n, "objects": [...]}</c>.</summary>
    /// <param name="stream">Where to; stays open.</param>
    /// <param name="family">The family.</param>
    /// <param name="rows">The rows, by number.</param>
    public static void WriteJson(Stream stream, ObjectFamily family, IReadOnlyList<FamilyRow> rows)
    {
        ArgumentNullException.ThrowIfNull(stream);
        stream.Write(Encoding.UTF8.GetBytes(ToNode(family, rows).ToJsonString() + "\n"));
    }

    /// <summary>The index as JSON.</summary>
    /// <param name="family">The family.</param>
    /// <param name="rows">The rows, by number.</param>
    public static JsonObject ToNode(ObjectFamily family, IReadOnlyList<FamilyRow> rows)
    {
        ArgumentNullException.ThrowIfNull(family);
        ArgumentNullException.ThrowIfNull(rows);
        return new JsonObject
        {
            ["axes"] = new JsonArray([.. family.Axes.Select(a => (JsonNode)a.Name)]),
            ["count"] = family.Count,
            ["objects"] = new JsonArray([.. rows.Select(Describe)]),
        };
    }

    private static JsonNode Describe(FamilyRow row) =>
        new JsonObject
        {
            ["number"] = row.Number,
            ["values"] = new JsonArray([.. row.Values.Select(v => (JsonNode)v)]),
            ["file"] = row.File,
            ["digest"] = row.Digest,
            ["errors"] = row.Errors,
            ["warnings"] = row.Warnings,
            ["triangles"] = row.Triangles,
            ["volume"] = Math.Round(row.Volume, 3),
            ["finding"] = row.Finding,
        };

    private static string Text(int value) => value.ToString(CultureInfo.InvariantCulture);
}
