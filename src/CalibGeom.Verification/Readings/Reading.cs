using System.Globalization;

namespace CalibGeom.Verification.Readings;

/// <summary>
/// One reading of one feature: a size, a count, a stage or a felt fit. A repeat is another reading of the same feature.
/// Immutable.
/// </summary>
public sealed record Reading
{
    private Reading(string id, ReadingKind kind, double value, string instrument, string note, int line)
    {
        FeatureId feature = FeatureId.Parse(id);
        ArgumentNullException.ThrowIfNull(instrument);
        ArgumentNullException.ThrowIfNull(note);
        if (KindOf(feature) != kind)
            throw new ArgumentException(
                $"feature {feature} takes a {KindOf(feature).ToString().ToLowerInvariant()}, not a "
                    + $"{kind.ToString().ToLowerInvariant()}.",
                nameof(id)
            );
        ArgumentOutOfRangeException.ThrowIfNegative(line);
        Feature = feature;
        Kind = kind;
        Value = value;
        Instrument = instrument;
        Note = note;
        Line = line;
    }

    /// <summary>The feature id as read, with its coupon prefix if it has one: <c>A1/box1.outside.x</c>.</summary>
    public FeatureId Feature { get; }

    /// <summary>What kind of value this is.</summary>
    public ReadingKind Kind { get; }

    /// <summary>The size in mm, or the count; the number of the enumeration value for a stage or a fit.</summary>
    public double Value { get; }

    /// <summary>The instrument's name, empty for an ordinary caliper.</summary>
    public string Instrument { get; }

    /// <summary>A free remark, maybe empty.</summary>
    public string Note { get; }

    /// <summary>The line it was read from, counted from 1; 0 when it was made in code.</summary>
    public int Line { get; }

    /// <summary>The file it was read from, as messages call it; null when it was made in code.</summary>
    public string? File { get; init; }

    /// <summary>Where it stands, before a sentence: <c>bench.csv:3: </c>; empty when it was made in code.</summary>
    internal string At => Line > 0 ? new InputPlace(File, Line) + ": " : "";

    /// <summary>The coupon the feature belongs to (<c>A1</c> of <c>A1/box1.outside.x</c>), or empty.</summary>
    public string Coupon => Feature.Coupon;

    /// <summary>The feature id without a coupon prefix.</summary>
    public FeatureId Id => Feature.OfObject;

    /// <summary>Whether a gauge block or pin was read, to learn an instrument's bias.</summary>
    public bool IsReference => Feature.Part == KnownFeatures.Reference && Feature.Coupon.Length == 0;

    /// <summary>The felt fit, or null when this is no fit.</summary>
    public FeltFit? Fit => Kind == ReadingKind.Fit ? (FeltFit)(int)Value : null;

    /// <summary>The stage, or null when this is no stage.</summary>
    public ColumnStage? Stage => Kind == ReadingKind.Stage ? (ColumnStage)(int)Value : null;

    /// <summary>The kind of value a feature takes, from the end of its id.</summary>
    /// <param name="feature">The feature id.</param>
    public static ReadingKind KindOf(FeatureId feature)
    {
        ArgumentNullException.ThrowIfNull(feature);
        return feature.Size switch
        {
            KnownFeatures.Open or KnownFeatures.Standing => ReadingKind.Count,
            KnownFeatures.Stood => ReadingKind.Stage,
            KnownFeatures.Fit => ReadingKind.Fit,
            _ => ReadingKind.Size,
        };
    }

    /// <summary>A size.</summary>
    /// <param name="feature">The feature id.</param>
    /// <param name="mm">The size in mm, over 0 and at most 1000.</param>
    /// <param name="instrument">The instrument's name.</param>
    /// <param name="note">A remark.</param>
    /// <param name="line">The line it was read from.</param>
    /// <exception cref="ArgumentException">The size is out of range, or the feature takes no size.</exception>
    public static Reading Size(string feature, double mm, string instrument = "", string note = "", int line = 0)
    {
        if (!(mm > 0 && mm <= 1000))
            throw new ArgumentException(Say($"mm is {mm}; a size is over 0 and at most 1000 mm."), nameof(mm));
        return new Reading(feature, ReadingKind.Size, mm, instrument, note, line);
    }

    /// <summary>A count.</summary>
    /// <param name="feature">The feature id, ending in <c>.open</c>.</param>
    /// <param name="count">From 0 to 1000.</param>
    /// <param name="note">A remark.</param>
    /// <param name="line">The line it was read from.</param>
    /// <exception cref="ArgumentException">The count is out of range, or the feature takes no count.</exception>
    public static Reading Count(string feature, int count, string note = "", int line = 0)
    {
        if (count is < 0 or > 1000)
            throw new ArgumentException(Say($"count is {count}; it runs from 0 to 1000."), nameof(count));
        return new Reading(feature, ReadingKind.Count, count, "", note, line);
    }

    /// <summary>A felt fit.</summary>
    /// <param name="feature">The feature id, ending in <c>.fit</c>.</param>
    /// <param name="fit">How it felt.</param>
    /// <param name="note">A remark.</param>
    /// <param name="line">The line it was read from.</param>
    /// <exception cref="ArgumentException">The fit is undefined, or the feature takes no fit.</exception>
    public static Reading Felt(string feature, FeltFit fit, string note = "", int line = 0)
    {
        if (!Enum.IsDefined(fit))
            throw new ArgumentException(Say($"fit is {fit}, which is undefined."), nameof(fit));
        return new Reading(feature, ReadingKind.Fit, (int)fit, "", note, line);
    }

    /// <summary>The last stage at which a column stood.</summary>
    /// <param name="feature">The feature id, ending in <c>.stood</c>.</param>
    /// <param name="stage">The stage.</param>
    /// <param name="note">A remark.</param>
    /// <param name="line">The line it was read from.</param>
    /// <exception cref="ArgumentException">The stage is undefined, or the feature takes no stage.</exception>
    public static Reading Stood(string feature, ColumnStage stage, string note = "", int line = 0)
    {
        if (!Enum.IsDefined(stage))
            throw new ArgumentException(Say($"stage is {stage}, which is undefined."), nameof(stage));
        return new Reading(feature, ReadingKind.Stage, (int)stage, "", note, line);
    }

    private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
