using System.Globalization;

namespace CalibGeom.Verification.Readings;

/// <summary>What the lines that begin with # say about a set of readings. Filled line by line.</summary>
internal sealed class ReadingHeader
{
    private static readonly string[] Words = ["digest", "temperature", "state", "instrument", "expansion", "material"];
    private static readonly string[] Keys = ["resolution", "mpe", "repeatability", "jaw", "variation", "record"];

    private readonly List<Instrument> instruments = [];
    private readonly List<string> comments = [];
    private readonly HashSet<string> seen = new(StringComparer.Ordinal);
    private string? digest;
    private double? temperature;
    private double? expansion;
    private PartState? state;
    private Material? material;

    /// <summary>Takes in the text after #.</summary>
    /// <exception cref="InputException">It cannot be understood; the message has no place.</exception>
    internal void Add(string text)
    {
        string[] parts = text.Split(
            (char[])[' ', '\t', ','],
            StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries
        );
        string word = parts.Length > 0 ? parts[0].TrimEnd(':') : "";
        if (!Words.Contains(word, StringComparer.Ordinal))
        {
            if (word.Length > 4 && Spelling.Nearest(word.ToLowerInvariant(), Words, 2) is { } meant)
                throw new InputException(InputIds.Readings, $"\"# {word}\" is not known; did you mean # {meant}?");
            comments.Add(text.Trim());
            return;
        }
        if (parts.Length == 1)
            return; // A line that stands ready in a sheet and was not filled in.
        if (word != "instrument" && !seen.Add(word))
            throw new InputException(InputIds.Readings, $"\"# {word}\" stands twice. Keep one of the lines.");
        Take(word, parts[1..]);
    }

    internal ReadingSet ToSet(IEnumerable<Reading> readings)
    {
        try
        {
            return new ReadingSet(readings, instruments, digest, temperature, state, expansion, material, comments);
        }
        catch (ArgumentException e)
        {
            throw InputException.Because(InputIds.Readings, e);
        }
    }

    private void Take(string word, string[] rest)
    {
        switch (word)
        {
            case "instrument":
                instruments.Add(ToInstrument(rest));
                break;
            case "material":
                material = ToMaterial(One(word, rest));
                break;
            case "state":
                state =
                    ReadingWords.ToState(One(word, rest))
                    ?? throw new InputException(
                        InputIds.Readings,
                        $"the state is \"{rest[0]}\"; it is one of {ReadingWords.StateList}."
                    );
                break;
            case "digest":
                digest = ToDigest(One(word, rest));
                break;
            case "temperature":
                temperature = ToNumber(word, One(word, rest));
                break;
            default:
                expansion = ToNumber(word, One(word, rest));
                break;
        }
    }

    internal static Material ToMaterial(string text) =>
        ReadingWords.ToMaterial(text)
        ?? throw new InputException(
            InputIds.Readings,
            $"the material is \"{text}\"; it is one of {ReadingWords.MaterialList}."
        );

    internal static string ToDigest(string text) =>
        text.Length == 16 && text.All(char.IsAsciiHexDigit)
            ? text.ToLowerInvariant()
            : throw new InputException(
                InputIds.Readings,
                $"the digest is \"{text}\"; it is 16 hex digits, as the feature table has them."
            );

    private static Instrument ToInstrument(string[] parts)
    {
        if (parts.Length == 0 || parts[0].Contains('='))
            throw new InputException(
                InputIds.Readings,
                "an instrument needs a name: # instrument cal resolution=0.01 mpe=0.02"
            );
        var values = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (string part in parts[1..])
        {
            string[] pair = part.Split('=', 2);
            if (pair.Length != 2 || !Keys.Contains(pair[0], StringComparer.Ordinal))
                throw new InputException(
                    InputIds.Readings,
                    $"\"{part}\" does not describe an instrument; write "
                        + $"{string.Join(", ", Keys.Select(k => k + "="))} with a value."
                );
            if (pair[1].Length > 0 && !values.TryAdd(pair[0], pair[1]))
                throw new InputException(InputIds.Readings, $"{pair[0]} of instrument {parts[0]} stands twice.");
        }
        return ToInstrument(
            parts[0],
            Value("resolution"),
            Value("mpe"),
            Value("repeatability"),
            values.GetValueOrDefault("jaw"),
            Value("variation")
        ) with
        {
            RecordFile = values.GetValueOrDefault("record"),
            IsAssumed = values.Count == 0,
        };

        double? Value(string key) => values.TryGetValue(key, out string? text) ? ToNumber(key, text) : null;
    }

    internal static Instrument ToInstrument(
        string name,
        double? resolution,
        double? mpe,
        double? repeatability,
        string? jaw,
        double? variation
    )
    {
        Jaw? which = null;
        if (jaw is not null)
            which =
                ReadingWords.ToJaw(jaw)
                ?? throw new InputException(
                    InputIds.Readings,
                    $"the jaw of instrument {name} is \"{jaw}\"; it is one of {ReadingWords.JawList}."
                );
        try
        {
            return mpe is { } limit
                ? Instrument.WithPermissibleError(name, limit, resolution ?? 0.01, repeatability, which, variation)
                : new Instrument(
                    name,
                    resolution ?? 0.01,
                    repeatability: repeatability,
                    jaw: which,
                    variation: variation
                );
        }
        catch (ArgumentException e)
        {
            throw InputException.Because(InputIds.Readings, e, $"instrument {name}: ");
        }
    }

    private static string One(string word, string[] rest) =>
        rest.Length > 0 ? rest[0] : throw new InputException(InputIds.Readings, $"\"# {word}\" needs a value.");

    private static double ToNumber(string word, string text) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double value)
        && double.IsFinite(value)
            ? value
            : throw new InputException(
                InputIds.Readings,
                $"{word} is \"{text}\", which is no number. Write it with a decimal point."
            );
}
