using System.Text.Json.Nodes;
using CalibGeom.Cli.Shared;
using CalibGeom.Verification.Maps;
using CalibGeom.Verification.Trends;

namespace CalibGeom.Cli.Maps;

/// <summary>The answer of map, as text and as JSON.</summary>
internal static class MapReport
{
    internal static void Write(TextWriter writer, MapResult map, IReadOnlyList<Finding> findings, JointOverPlate? joint)
    {
        writer.WriteLine(findings[0].Message);
        if (findings[0].Remedy.Length > 0)
            writer.WriteLine(findings[0].Remedy);
        writer.WriteLine();
        FindingText.Write(writer, findings.Skip(1));
        if (joint is not null)
            writer.WriteLine(joint.ToString());
        writer.WriteLine();
        TextTable.Write(
            writer,
            [
                ["coupon", "x mm", "y mm", "growth mm", "print-through mm", "light read %", "light fitted %"],
                .. map.Places.Select(Row),
            ]
        );
        writer.WriteLine("Light is against the mean of the coupons, with its 95 % interval.");
    }

    internal static JsonObject Json(MapResult map, JointOverPlate? joint) =>
        new()
        {
            ["differs"] = map.Differs,
            ["probability"] = map.Probability,
            ["shape"] = map.Shape.ToString().ToLowerInvariant(),
            ["tests"] = new JsonObject
            {
                ["any"] = Test(map.AnyDifference),
                ["plane"] = Test(map.Plane),
                ["bowl"] = Test(map.Bowl),
            },
            ["weakest"] = new JsonArray([.. map.WeakestPlaces.Select(Weakest)]),
            ["exposureFactor"] = Math.Exp(map.ExposureChange),
            ["withinShare"] = map.WithinShare,
            ["within"] = map.Within is { } w
                ? new JsonObject
                {
                    ["minX"] = w.MinX,
                    ["maxX"] = w.MaxX,
                    ["minY"] = w.MinY,
                    ["maxY"] = w.MaxY,
                }
                : null,
            ["level"] = map.Level is { } level
                ? new JsonObject
                {
                    ["tilted"] = level.Tilted,
                    ["alongX"] = level.AlongX,
                    ["alongY"] = level.AlongY,
                }
                : null,
            ["joint"] = joint is null
                ? null
                : new JsonObject { ["clearance"] = Share(joint.Clearance), ["anywhere"] = joint.Anywhere },
            ["places"] = new JsonArray(map.Places.Select(Place).ToArray()),
        };

    private static JsonNode Weakest(WeakPlace w) =>
        new JsonObject
        {
            ["x"] = w.X,
            ["y"] = w.Y,
            ["probability"] = w.Probability,
            ["lacks"] = Share(w.Lacks),
        };

    private static JsonNode Place(PlacedLight p) =>
        new JsonObject
        {
            ["coupon"] = p.Point.Name,
            ["x"] = p.Point.X,
            ["y"] = p.Point.Y,
            ["logLight"] = p.Own is { } own ? Share(own) : null,
            ["fitted"] = Share(p.Fitted),
        };

    private static JsonObject? Test(NestedTest? test) =>
        test is { } t
            ? new JsonObject
            {
                ["f"] = t.Statistic,
                ["freedom"] = t.Freedom,
                ["leftFreedom"] = t.LeftFreedom,
                ["probability"] = t.Probability,
            }
            : null;

    private static JsonObject Share(Amount a) =>
        new()
        {
            ["value"] = a.Value,
            ["low"] = a.Low,
            ["high"] = a.High,
        };

    private static string[] Row(PlacedLight p) =>
        [
            p.Point.Name,
            Text($"{p.Point.X:0}"),
            Text($"{p.Point.Y:0}"),
            Mean(p, Gauge.Growth, "0.000"),
            Mean(p, Gauge.PrintThrough, p.Point.Values.Any(v => v.Counted) ? "0.00" : "0.000"),
            p.Own is { } own ? Light(own) : "-",
            Light(p.Fitted),
        ];

    private static string Mean(PlacedLight p, Gauge gauge, string format)
    {
        double[] values = p.Point.Values.Where(v => v.Gauge == gauge).Select(v => v.Value).ToArray();
        return values.Length == 0
            ? "-"
            : values.Average().ToString(format, System.Globalization.CultureInfo.InvariantCulture);
    }

    private static string Light(Amount a) =>
        Text($"{Percent(a.Value, 1):+0.0;-0.0} ({Percent(a.Low, 0):+0;-0} to {Percent(a.High, 0):+0;-0})");

    // A value that rounds to nothing from below would be written -+0.
    private static double Percent(double log, int decimals) => Math.Round(100 * (Math.Exp(log) - 1), decimals) + 0.0;

    private static string Text(FormattableString text) => FormattableString.Invariant(text);
}
