using System.Globalization;
using System.Text.Json;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Verification.Logs;

/// <summary>Trials to and from one line of JSON.</summary>
internal static class TrialJson
{
    // Signs such as the micro sign stand as they are: the text is read as UTF-8, never put into a web page.
    private static readonly TrialJsonContext Context = new(
        new JsonSerializerOptions(TrialJsonContext.Default.Options)
        {
            Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        }
    );

    internal static Trial Parse(string text, string where)
    {
        try
        {
            return FromDocument(
                JsonSerializer.Deserialize(text, Context.TrialDocument)
                    ?? throw new InputException(InputIds.Log, $"{where} holds no trial.")
            );
        }
        catch (JsonException e)
        {
            string path = e.Path is { Length: > 1 } p ? $" at {p}" : "",
                column = e.BytePositionInLine is { } at ? $":{at + 1}" : "";
            throw new InputException(
                InputIds.Log,
                $"{where}{column}: this is no trial{path}: {JsonWords.Of(e)} See the log format in the guide.",
                e
            );
        }
        catch (ArgumentException e)
        {
            throw InputException.Because(InputIds.Log, e, $"{where}: ");
        }
        catch (InvalidOperationException e)
        {
            throw new InputException(
                InputIds.Log,
                $"{where}: this is no trial: a text in it is no Unicode. Mend the line.",
                e
            );
        }
    }

    internal static string Write(Trial trial)
    {
        ArgumentNullException.ThrowIfNull(trial);
        return JsonSerializer.Serialize(ToDocument(trial), Context.TrialDocument);
    }

    private static Trial FromDocument(TrialDocument d)
    {
        var conditions = new TrialConditions(
            d.Layer,
            d.Resin,
            d.Printer,
            (PartState)Index(d.State, "state", PartStates),
            d.GreyLevels,
            d.Orientation,
            d.TemperatureStart,
            d.TemperatureEnd
        )
        {
            Bottle = d.Bottle ?? "",
            Film = d.Film ?? "",
            Screen = d.Screen ?? "",
        };
        return new Trial(new ExposureSettings(d.Time, d.Rest, d.EdgeOffset), conditions)
        {
            Date = d.Date is null ? null : ParseDate(d.Date),
            Digest = d.Digest,
            Place = d.Place is { } p ? new PlateSpot(p.Label ?? "", p.X, p.Y, p.Turn) : null,
            LayersSince = d.LayersSince,
            HoursSince = d.HoursSince,
            Cycle = new LayerCycle(d.BaseLayers, d.BaseTime, d.Lift),
            Instrument = d.Instrument,
            GrowthX = Growth(d.GrowthX),
            GrowthY = Growth(d.GrowthY),
            Scale = new SlicerScale(d.SlicerScaleX ?? 1, d.SlicerScaleY ?? 1),
            Pixel = d.PixelX is { } pitch ? new PerAxis(pitch, d.PixelY ?? pitch) : null,
            ScaleX = Scale(d.ScaleX),
            ScaleY = Scale(d.ScaleY),
            Joints = Each(d.Joints, "joint")
                .Select(j => new JointOutcome(
                    j.Id,
                    j.Designed,
                    j.Fit is null ? null : (FeltFit)Index(j.Fit, "fit", Fits),
                    j.DesignedY
                ))
                .ToArray(),
            Columns = Each(d.Columns, "column")
                .Select(c => new ColumnOutcome(
                    c.Diameter,
                    (ColumnStage)Index(c.Stood, "stage", Stages),
                    c.Id,
                    c.HeadDiameter
                ))
                .ToArray(),
            Slots = d.Slots is null ? null : new SlotOutcome(d.Slots.Heights, d.Slots.Open),
            Readings = d.Readings.ToDictionary(
                r => r.Key,
                r =>
                    (IReadOnlyList<double>)(
                        r.Value ?? throw new ArgumentException($"the readings of {r.Key} are null.")
                    ),
                StringComparer.Ordinal
            ),
            Nominals = d.Nominals ?? [],
        };
    }

    private static IEnumerable<T> Each<T>(IEnumerable<T?> all, string what)
        where T : class => all.Select(one => one ?? throw new ArgumentException($"null is no {what}. Leave it out."));

    private static TrialDocument ToDocument(Trial t) =>
        new()
        {
            Date = t.Date?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
            Digest = t.Digest,
            Place = t.Place is { } p
                ? new TrialDocument.PlaceDocument
                {
                    Label = Said(p.Label),
                    X = p.X,
                    Y = p.Y,
                    Turn = p.Turn,
                }
                : null,
            LayersSince = t.LayersSince,
            HoursSince = t.HoursSince,
            Time = t.Settings.Time,
            Rest = t.Settings.Rest,
            EdgeOffset = t.Settings.EdgeOffset,
            Layer = t.Conditions.Layer,
            BaseLayers = t.Cycle.BaseLayers,
            BaseTime = t.Cycle.BaseTime,
            Lift = t.Cycle.Lift,
            TemperatureStart = t.Conditions.TemperatureStart,
            TemperatureEnd = t.Conditions.TemperatureEnd,
            Resin = t.Conditions.Resin,
            Printer = t.Conditions.Printer,
            Bottle = Said(t.Conditions.Bottle),
            Film = Said(t.Conditions.Film),
            Screen = Said(t.Conditions.Screen),
            State = TrialConditions.Word(t.Conditions.State),
            GreyLevels = t.Conditions.GreyLevels,
            Orientation = t.Conditions.Orientation,
            Instrument = t.Instrument,
            GrowthX = Growth(t.GrowthX),
            GrowthY = Growth(t.GrowthY),
            SlicerScaleX = t.Scale.X == 1 ? null : t.Scale.X,
            SlicerScaleY = t.Scale.Y == 1 ? null : t.Scale.Y,
            PixelX = t.Pixel?.X,
            PixelY = t.Pixel is { IsUniform: false } pitch ? pitch.Y : null,
            ScaleX = Scale(t.ScaleX),
            ScaleY = Scale(t.ScaleY),
            Joints = t
                .Joints.Select(j => new TrialDocument.JointDocument
                {
                    Id = j.Id,
                    Designed = j.Designed,
                    DesignedY = j.DesignedY == j.Designed ? null : j.DesignedY,
                    Fit = j.Fit is { } f ? Fits[(int)f] : null,
                })
                .ToList(),
            Columns = t
                .Columns.Select(c => new TrialDocument.ColumnDocument
                {
                    Id = c.Id,
                    Diameter = c.Diameter,
                    HeadDiameter = c.HeadDiameter,
                    Stood = Stages[(int)c.Stood],
                })
                .ToList(),
            Slots = t.Slots is null
                ? null
                : new TrialDocument.SlotDocument { Heights = [.. t.Slots.Heights], Open = t.Slots.Open },
            Readings = t.Readings.ToDictionary(r => r.Key, r => r.Value.ToList(), StringComparer.Ordinal),
            Nominals =
                t.Nominals.Count == 0
                    ? null
                    : t.Nominals.ToDictionary(n => n.Key, n => n.Value, StringComparer.Ordinal),
        };

    private static string? Said(string text) => text.Length > 0 ? text : null;

    private static readonly string[] Fits = ["refuses", "binds", "slides", "rattles"];
    private static readonly string[] Stages = ["lost", "plate", "wash", "cure"];
    private static readonly string[] PartStates = ["washed", "dry", "post-cured"];

    private static int Index(string word, string what, string[] words) =>
        Array.IndexOf(words, word) is var index and >= 0
            ? index
            : throw new ArgumentException($"'{word}' is no {what}; use {string.Join(", ", words)}.");

    private static GrowthReading? Growth(TrialDocument.GrowthDocument? d) =>
        d is null ? null : new GrowthReading(d.Value, d.Uncertainty, d.Bias);

    private static TrialDocument.GrowthDocument? Growth(GrowthReading? g) =>
        g is null
            ? null
            : new TrialDocument.GrowthDocument
            {
                Value = g.Value,
                Uncertainty = g.Uncertainty,
                Bias = g.Bias,
            };

    private static ScaleReading? Scale(TrialDocument.ScaleDocument? d) =>
        d is null ? null : new ScaleReading(d.Value, d.Uncertainty);

    private static TrialDocument.ScaleDocument? Scale(ScaleReading? s) =>
        s is null ? null : new TrialDocument.ScaleDocument { Value = s.Value, Uncertainty = s.Uncertainty };

    internal static DateOnly ParseDate(string text) =>
        DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly date)
            ? date
            : throw new ArgumentException($"'{text}' is no date; write it as 2026-03-01.");
}
