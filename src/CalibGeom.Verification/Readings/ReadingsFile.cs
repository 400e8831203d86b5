using System.Text;
using CalibGeom.Features.Files;

namespace CalibGeom.Verification.Readings;

/// <summary>
/// Readings files: CSV with the header <c>feature,value,unit,instrument,note</c> (the first two required; semicolons
/// accepted), or JSON with the same names. Lines that begin with # describe conditions: <c># digest</c>, <c>#
/// temperature 23</c>, <c># state washed|dry|post-cured</c>, <c># instrument cal resolution=0.01 mpe=0.02</c>, <c>#
/// expansion 80e-6</c>, <c># material rigid|flexible</c>. Rows without a value are left out.
/// </summary>
public static class ReadingsFile
{
    private const int MostBytes = ReaderLimits.ReadingsBytes;

    /// <summary>Reads a file.</summary>
    /// <param name="path">Its path.</param>
    /// <exception cref="InputException">The content cannot be used; the message names the line.</exception>
    /// <exception cref="IOException">Reading failed.</exception>
    /// <exception cref="UnauthorizedAccessException">The file may not be read.</exception>
    public static ReadingSet Read(string path)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        using FileStream stream = File.OpenRead(path);
        return Read(stream, path);
    }

    /// <summary>Reads a stream.</summary>
    /// <param name="stream">The stream; stays open.</param>
    /// <param name="name">What to call it in messages.</param>
    /// <exception cref="InputException">The content cannot be used; the message names the line.</exception>
    /// <exception cref="IOException">Reading failed.</exception>
    public static ReadingSet Read(Stream stream, string name)
    {
        return Parse(InputBytes.Utf8(InputBytes.Read(stream, MostBytes, "a readings file"), name), name);
    }

    /// <summary>Reads a text; JSON when it begins with a brace, else CSV.</summary>
    /// <param name="text">The text.</param>
    /// <param name="name">What to call it in messages.</param>
    /// <exception cref="InputException">The content cannot be used; the message names the line.</exception>
    public static ReadingSet Parse(string text, string name = "readings")
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(name);
        return text.TrimStart('\uFEFF', ' ', '\t', '\r', '\n').StartsWith('{')
            ? ReadingsJson.Parse(text, name)
            : ReadingsCsv.Parse(text, name);
    }

    /// <summary>Readings without a file, as <c>box1.outside.x=8.02</c>; values as in a file, sizes in mm.</summary>
    /// <param name="given">The readings, in any order.</param>
    /// <exception cref="InputException">One is no reading; the message begins with it.</exception>
    public static ReadingSet Parse(IEnumerable<string> given)
    {
        ArgumentNullException.ThrowIfNull(given);
        return new ReadingSet(given.SelectMany(Of));
    }

    /// <summary>Readings as CSV that <see cref="Parse(string, string)"/> reads as the same readings.</summary>
    /// <param name="readings">The readings; sizes in mm with six decimals at most. Instruments are named and not
    /// described.</param>
    /// <param name="digest">The digest of the spec that was printed (16 hex digits), or null.</param>
    /// <param name="state">What had been done to the part, or null.</param>
    /// <param name="material">Whether the material gives under the jaws, or null.</param>
    /// <param name="remark">A remark of one line that is kept with them, or null.</param>
    /// <exception cref="ArgumentException">The remark has several lines.</exception>
    public static string ToText(
        IEnumerable<Reading> readings,
        string? digest = null,
        PartState? state = null,
        Material? material = null,
        string? remark = null
    )
    {
        ArgumentNullException.ThrowIfNull(readings);
        Reading[] all = [.. readings];
        var text = new StringBuilder();
        void Line(string line) => text.Append(line).Append('\n');
        if (digest is not null)
            Line($"# digest {digest}");
        if (remark is not null)
            Line($"# {Require.OneLine(remark, "remark", nameof(remark))}");
        if (state is { } done)
            Line($"# state {ReadingWords.Of(done)}");
        if (material is { } known)
            Line($"# material {ReadingWords.Of(known)}");
        bool plain = all.All(r => r.Instrument.Length == 0 && r.Note.Length == 0);
        Line(plain ? "feature,value" : "feature,value,unit,instrument,note");
        foreach (Reading r in all)
            Line(
                $"{r.Feature},{ReadingWords.Of(r)}"
                    + (plain ? "" : $",,{CsvText.Quote(r.Instrument)},{CsvText.Quote(r.Note)}")
            );
        return text.ToString();
    }

    private static IEnumerable<Reading> Of(string given)
    {
        if (given.Split('=') is not [{ Length: > 0 } feature, { Length: > 0 } value])
            throw new InputException(
                InputIds.Readings,
                $"{given}: write the feature's id and its value, such as box1.outside.x=8.02."
            );
        try
        {
            var row = new ReadingRow(feature.Trim(), value.Trim(), "", "", "", 0);
            return FeatureRange.Expand(row).Select(r => r.ToReading()).ToArray();
        }
        catch (InputException e)
        {
            throw new InputException(InputIds.Readings, $"{given}: {e.Message}", e);
        }
    }

    /// <summary>The same from a stream that is only ever read asynchronously.</summary>
    /// <param name="stream">Where from; stays open.</param>
    /// <param name="name">What to call it in messages.</param>
    /// <param name="cancellation">Stops the reading.</param>
    /// <exception cref="InputException">As for <see cref="Read(Stream, string)"/>.</exception>
    /// <exception cref="OperationCanceledException">The reading was stopped.</exception>
    public static Task<ReadingSet> ReadAsync(Stream stream, string name, CancellationToken cancellation = default) =>
        AsyncStreams.ReadAsync(stream, ReaderLimits.ReadingsBytes, from => Read(from, name), cancellation);
}
