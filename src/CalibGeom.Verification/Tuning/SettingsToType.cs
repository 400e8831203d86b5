using System.Globalization;
using CalibGeom.Verification.Logs;

namespace CalibGeom.Verification.Tuning;

/// <summary>Every number to type into slicer and printer for some settings, and what must be off. Immutable.</summary>
/// <param name="Settings">Exposure, rest and edge offset.</param>
/// <param name="RestFromLightOff">The same rest on a machine that counts from light-off: lift and rest, s.</param>
/// <param name="Pixels">The edge offset in whole pixels where it moves by these; null where it does not.</param>
/// <param name="BaseLayers">Number of base layers, as logged.</param>
/// <param name="BaseTime">Exposure of a base layer, as logged, s.</param>
public sealed record SettingsToType(
    ExposureSettings Settings,
    double RestFromLightOff,
    int? Pixels,
    int BaseLayers,
    double BaseTime
)
{
    /// <summary>What must be off in the slicer, or the offset and the exposure mean something else.</summary>
    public const string MustBeOff =
        "any other growth or tolerance compensation, any change "
        + "of exposure by layer other than the base, smoothing that "
        + "blurs edges "
        + "unless grey levels were on in these prints";

    /// <summary>The pixel pitch, where it was named, mm.</summary>
    public PerAxis? Pitch { get; init; }

    /// <summary>Scale along X, 1 where none is told.</summary>
    public double ScaleX { get; init; } = 1;

    /// <summary>Scale along Y, 1 where none is told.</summary>
    public double ScaleY { get; init; } = 1;

    /// <summary>Lines of name and value, in the order to type them; scale only where it is not 1.</summary>
    public IReadOnlyList<KeyValuePair<string, string>> Lines =>
        [
            new("exposure", Text($"{Settings.Time:0.###} s")),
            new("rest before exposure", Text($"{Settings.Rest:0.###} s")),
            new("  counted from light-off", Text($"{RestFromLightOff:0.###} s (lift and rest)")),
            new("edge offset", Offset()),
            .. Scale("scale X", ScaleX),
            .. Scale("scale Y", ScaleY),
            new("base layers", Text($"{BaseLayers} of {BaseTime:0.###} s")),
            new("must be off", MustBeOff),
        ];

    internal static SettingsToType Of(Trial last, ExposureSettings settings, TuneOptions options) =>
        new(
            settings,
            Math.Round(settings.Rest + last.Cycle.Lift, 6),
            options.PixelMove is { } pixel && !last.Conditions.GreyLevels
                ? (int)Math.Round(settings.EdgeOffset / pixel)
                : null,
            last.Cycle.BaseLayers,
            last.Cycle.BaseTime
        )
        {
            Pitch = options.Pixel,
        };

    private static IEnumerable<KeyValuePair<string, string>> Scale(string name, double factor) =>
        factor == 1 ? [] : [new(name, Text($"{100 * factor:0.00} % ({factor:0.0000})"))];

    private string Offset()
    {
        double offset = Settings.EdgeOffset;
        if (offset == 0)
            return "0 (none)";
        string words = offset < 0 ? "solids drawn smaller on every edge" : "solids drawn larger on every edge";
        if (Pixels is not { } n)
            return Text($"{offset:+0.000;-0.000} mm per edge ({words})");
        string pixels = Text($"{Math.Abs(n)} whole {(Math.Abs(n) == 1 ? "pixel" : "pixels")}");
        return Pitch is { IsUniform: false } p
            ? Text($"X {n * p.X:+0.000;-0.000} mm, Y {n * p.Y:+0.000;-0.000} mm per edge, {pixels} each ({words})")
            : Text($"{offset:+0.000;-0.000} mm per edge, {pixels} ({words})");
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
