using System.IO.Compression;
using System.Text;
using CalibGeom.Objects.Families;
using CalibGeom.Verification.Maps;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Cli.Shared.Outputs;

/// <summary>
/// Tells files that this tool wrote, and may write again, from those of other people, by what stands in them.
/// </summary>
internal static class OwnFile
{
    private const int Head = 1 << 16,
        LargestSheet = 1 << 20;

    /// <summary>Why an existing file may not be written over, or null.</summary>
    internal static string? Refusal(string path)
    {
        if (new FileInfo(path).Length == 0 || IsOurs(path))
            return null;
        return IsTable(path)
            ? $"{path} holds values already. Name another file; --force writes over it, and what stands in it is lost."
            : $"{path} exists and was not written by this tool. Name another file; --force writes over it.";
    }

    private static bool IsOurs(string path)
    {
        try
        {
            return Is(path, ".3mf") ? IsOurPackage(path)
                : IsTable(path) ? IsOurTable(path)
                : Array.Exists(Marks(path), mark => Holds(path, mark));
        }
        catch (Exception e) when (e is IOException or InvalidDataException or UnauthorizedAccessException)
        {
            return false;
        }
    }

    /// <summary>One of these stands near the beginning or the end of each kind of file that we write.</summary>
    private static string[] Marks(string path) =>
        Path.GetExtension(path).ToUpperInvariant() switch
        {
            ".STL" => [" mm digest "],
            ".OBJ" => ["# mm\no "],
            // Readings in JSON name a digest too, but hold no spec.
            ".JSON" => ["\"spec\":", FamilyIndex.JsonBeginning],
            ".JSONL" => [FamilyIndex.JournalMark],
            ".SVG" => ["font-family=\"'DejaVu Sans', Verdana, sans-serif\">"],
            ".HTML" => ["style-src 'unsafe-inline'; img-src data:\">"],
            _ => ["calibgeom"],
        };

    private static bool IsTable(string path) => Is(path, ".csv");

    /// <summary>
    /// A feature table, the index of a family, a grid of light, a sheet that nobody has filled in, or simulated
    /// readings.
    /// </summary>
    private static bool IsOurTable(string path)
    {
        if (Holds(path, FamilyIndex.CsvMark))
            return true;
        if (new FileInfo(path).Length > LargestSheet)
            return false;
        string text = File.ReadAllText(path);
        return text.Contains("\nfeature,nominal,", StringComparison.Ordinal)
            || text.StartsWith("feature,nominal,", StringComparison.Ordinal)
            || text.StartsWith(CoverageGrid.Header, StringComparison.Ordinal)
            || text.Contains($"# {SimulatedRemark}\n", StringComparison.Ordinal)
            || !ReadingsSheet.HoldsValues(text);
    }

    /// <summary>The remark that tells simulated readings from measured ones.</summary>
    internal const string SimulatedRemark = "simulated, not measured";

    private static bool IsOurPackage(string path)
    {
        using ZipArchive zip = ZipFile.OpenRead(path);
        ZipArchiveEntry? model = zip.Entries.FirstOrDefault(e => Is(e.FullName, ".model"));
        if (model is null)
            return false;
        using Stream stream = model.Open();
        return Begin(stream).Contains("calibgeom", StringComparison.OrdinalIgnoreCase);
    }

    private static bool Holds(string path, string mark)
    {
        using FileStream stream = File.OpenRead(path);
        if (Begin(stream).Contains(mark, StringComparison.Ordinal))
            return true;
        stream.Seek(-Math.Min(Head, stream.Length), SeekOrigin.End);
        return Begin(stream).Contains(mark, StringComparison.Ordinal);
    }

    private static string Begin(Stream stream)
    {
        var head = new byte[Head];
        return Encoding.Latin1.GetString(head, 0, stream.ReadAtLeast(head, Head, throwOnEndOfStream: false));
    }

    private static bool Is(string path, string ending) => path.EndsWith(ending, StringComparison.OrdinalIgnoreCase);
}
