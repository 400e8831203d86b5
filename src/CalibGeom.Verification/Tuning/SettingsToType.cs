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

    /// <summary>Lines of name and value, in the order to type them.</summary>
    public IReadOnlyList<KeyValuePair<string, string>> Lines =>
        [
            new("exposure", Text($"{Settings.Time:0.###} s")),
            new("rest before exposure", Text($"{Settings.Rest:0.###} s")),
            new("  counted from light-off", Text($"{RestFromLightOff:0.###} s (lift and rest)")),
            new("edge offset", Offset()),
            new("base layers", Text($"{BaseLayers} of {BaseTime:0.###} s")),
            new("must be off", MustBeOff),
        ];

    internal static SettingsToType Of(Trial last, ExposureSettings settings, TuneOptions options) =>
        new(
            settings,
            Math.Round(settings.Rest + last.Cycle.Lift, 6),
            options.Pixel is { } pixel && !last.Conditions.GreyLevels
                ? (int)Math.Round(settings.EdgeOffset / pixel)
                : null,
            last.Cycle.BaseLayers,
            last.Cycle.BaseTime
        );

    private string Offset()
    {
        double offset = Settings.EdgeOffset;
        if (offset == 0)
            return "0 (none)";
        string pixels = Pixels is { } n ? Text($", {Math.Abs(n)} whole {(Math.Abs(n) == 1 ? "pixel" : "pixels")}") : "",
            words = offset < 0 ? "solids drawn smaller on every edge" : "solids drawn larger on every edge";
        return Text($"{offset:+0.000;-0.000} mm per edge{pixels} ({words})");
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
