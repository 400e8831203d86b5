using System.CommandLine;
using System.Globalization;
using CalibGeom.Verification.Logs;

namespace CalibGeom.Cli.Logs;

/// <summary>The options of <c>log add</c> that say what was set and in what conditions.</summary>
internal sealed class LogAddOptions
{
    private readonly Option<double?> time = Number("--time", "S", "Exposure of a normal layer, s."),
        rest = Number("--rest", "S", "Rest before each exposure, s."),
        offset = Number("--edge-offset", "MM", "Edge offset entered in the slicer, mm, positive = solids larger."),
        scaleX = Number("--scale-x", "F", "Scale typed in the slicer along X, such as 1.002. Default 1."),
        scaleY = Number("--scale-y", "F", "Scale typed in the slicer along Y, such as 1.002. Default 1."),
        layer = Number("--layer", "MM", "Layer height, mm."),
        baseTime = Number("--base-time", "S", "Exposure of a base layer, s."),
        lift = Number("--lift", "S", "What a layer takes besides exposure and rest, s."),
        start = Number("--temperature-start", "C", "Vat temperature at the start, degrees C."),
        end = Number("--temperature-end", "C", "Vat temperature at the end, degrees C."),
        hours = Number("--hours-since", "H", "Hours the machine has printed since the print before.");

    private readonly Option<int?> baseLayers = Whole("--base-layers", "N", "Number of base layers."),
        orientation = Whole("--orientation", "DEG", "How an object lay that place did not turn: 0 or 90 degrees."),
        layers = Whole("--layers-since", "N", "Layers the machine has printed since the print before.");

    private readonly Option<string?> resin = Text("--resin", "NAME", "The resin's name."),
        printer = Text("--printer", "NAME", "The printer's name."),
        bottle = Text("--bottle", "NAME", "The bottle or batch of the resin."),
        film = Text("--film", "NAME", "Which film is in the vat."),
        screen = Text("--screen", "NAME", "Which screen or light engine is in the printer."),
        date = Text("--date", "DAY", "Day of the print, such as 2026-03-01. Default: today.");

    private readonly Option<bool?> grey = new("--grey-levels")
    {
        Description = "Whether the slicer wrote grey-level edges: true or false.",
        HelpName = "true|false",
        Arity = ArgumentArity.ZeroOrOne,
    };

    internal IEnumerable<Option> All =>
        [
            time,
            rest,
            offset,
            scaleX,
            scaleY,
            layer,
            baseLayers,
            baseTime,
            lift,
            start,
            end,
            resin,
            printer,
            bottle,
            film,
            screen,
            grey,
            orientation,
            layers,
            hours,
            date,
        ];

    internal TrialEntry Read(ParseResult parsed, DateOnly today) =>
        new()
        {
            Time = parsed.GetValue(time),
            Rest = parsed.GetValue(rest),
            EdgeOffset = parsed.GetValue(offset),
            ScaleX = parsed.GetValue(scaleX),
            ScaleY = parsed.GetValue(scaleY),
            Layer = parsed.GetValue(layer),
            BaseLayers = parsed.GetValue(baseLayers),
            BaseTime = parsed.GetValue(baseTime),
            Lift = parsed.GetValue(lift),
            TemperatureStart = parsed.GetValue(start),
            TemperatureEnd = parsed.GetValue(end),
            Resin = parsed.GetValue(resin),
            Printer = parsed.GetValue(printer),
            Bottle = parsed.GetValue(bottle),
            Film = parsed.GetValue(film),
            Screen = parsed.GetValue(screen),
            GreyLevels = parsed.GetValue(grey),
            Orientation = parsed.GetValue(orientation),
            LayersSince = parsed.GetValue(layers),
            HoursSince = parsed.GetValue(hours),
            Date = parsed.GetValue(date) is { } day ? Day(day) : today,
        };

    /// <exception cref="InputException">It is no day.</exception>
    internal static DateOnly Day(string text) =>
        DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day)
            ? day
            : throw new InputException(InputIds.Option, $"--date {text} is no day. Write it as 2026-03-01.");

    internal static Option<string?> Text(string name, string help, string description) =>
        new(name) { Description = description, HelpName = help };

    private static Option<double?> Number(string name, string help, string description) =>
        new(name) { Description = description, HelpName = help };

    private static Option<int?> Whole(string name, string help, string description) =>
        new(name) { Description = description, HelpName = help };
}
