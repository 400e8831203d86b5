using System.Text.Json.Nodes;
using CalibGeom.Cli.Shared;
using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Tuning;

namespace CalibGeom.Cli.Tune;

/// <summary>The answer of tune, as text and as JSON.</summary>
internal static class TuneReport
{
    internal static void Write(TextWriter writer, TuningResult result)
    {
        Finding answer = result.Findings[0];
        writer.WriteLine(answer.Message);
        if (answer.Remedy.Length > 0)
            writer.WriteLine(answer.Remedy);
        writer.WriteLine();
        FindingText.Write(writer, result.Findings.Skip(1));
        writer.WriteLine();
        TextTable.Write(
            writer,
            [
                [
                    "joint",
                    "axis",
                    "target mm",
                    "as printed last",
                    "+- (95 %)",
                    "on target",
                    "as advised",
                    "+- (95 %)",
                    "on target",
                ],
                .. result.Chances.Zip(Tuner.ChancesAt(result, result.Next.Settings), Row),
            ]
        );
        writer.WriteLine();
        TextTable.Write(
            writer,
            [
                [
                    "rest s",
                    "exposure s",
                    "95 %",
                    "d50 mm",
                    "print-through mm",
                    $"minutes at {Text($"{result.Options.ProductionHeight:0}")} mm",
                ],
                .. result
                    .Curve.Where(p => Math.Abs(p.Rest * 2 - Math.Round(p.Rest * 2)) < 1e-9)
                    .Select(p => Row(p, result.Columns)),
            ]
        );
        writer.WriteLine();
        writer.WriteLine(Caution.Text);
    }

    internal static JsonObject Json(TuningResult result) =>
        new()
        {
            ["next"] = new JsonObject
            {
                ["kind"] = Word(result.Next.Kind),
                ["settings"] = Settings(result.Next.Settings),
                ["keep"] = Settings(result.Next.Keep),
                ["goalTime"] = result.Next.GoalTime,
                ["goalRest"] = result.Next.GoalRest,
            },
            ["targetGrowth"] = result.TargetGrowth,
            ["response"] = new JsonObject
            {
                ["referenceTime"] = result.Response.ReferenceTime,
                ["growth"] = result.Response.GrowthAtReference,
                ["timeEffect"] = result.Response.TimeEffect,
                ["restEffect"] = result.Response.RestEffect,
                ["restTime"] = result.Response.RestTime,
                ["axisDifference"] = result.Response.AxisDifference.Mean,
                ["axisDifferenceUncertainty"] = result.Response.AxisDifference.Uncertainty,
                ["fitProbability"] = result.Response.FitProbability,
                ["curvatureRatio"] = result.Response.CurvatureRatio,
            },
            ["columns"] = result.Columns is { } columns ? Columns(columns, result.Next.Settings.Time) : null,
            ["slots"] = result.PrintThrough is { } light ? Slots(light, result.Next.Settings.Time) : null,
            ["clearances"] = Clearances(result.Chances),
            ["advisedClearances"] = Clearances(Tuner.ChancesAt(result, result.Next.Settings)),
            ["curve"] = new JsonArray(result.Curve.Select(p => Point(p, result.Columns)).ToArray()),
            ["trials"] = result.Trials.Count,
            ["keptApart"] = new JsonArray(
                result
                    .KeptApart.Select(k => (JsonNode)new JsonObject { ["trial"] = k.Number, ["why"] = k.Why })
                    .ToArray()
            ),
        };

    private static JsonArray Clearances(IReadOnlyList<JointChance> chances) =>
        new(
            chances
                .Select(c =>
                    (JsonNode)
                        new JsonObject
                        {
                            ["joint"] = c.Joint,
                            ["axis"] = c.Axis,
                            ["target"] = c.Target,
                            ["clearance"] = c.Clearance,
                            ["uncertainty"] = c.Uncertainty,
                            ["onTarget"] = c.OnTarget,
                        }
                )
                .ToArray()
        );

    private static bool Bracketed(ColumnSurvival? columns) =>
        columns is not null && columns.Lost > 0 && columns.Lost < columns.Count;

    private static JsonObject Columns(ColumnSurvival columns, double time)
    {
        ColumnLimit limit = columns.Limit(time);
        return new JsonObject
        {
            ["limit"] = Bracketed(columns) ? limit.Diameter : null,
            ["low"] = limit.Low,
            ["high"] = double.IsFinite(limit.High) ? limit.High : null,
            ["tried"] = columns.Count,
            ["lost"] = columns.Lost,
            ["lostLater"] = columns.LostLater,
            ["timeExponent"] = columns.TimeExponent,
        };
    }

    private static JsonObject Slots(PrintThroughResponse light, double time) =>
        new()
        {
            ["printThrough"] = light.At(time).Mean,
            ["uncertainty"] = light.At(time).Uncertainty,
            ["penetrationDepth"] = light.PenetrationDepth,
            ["doseRatio"] = light.DoseRatio(time),
        };

    private static string[] Row(JointChance last, JointChance next) =>
        [last.Joint, last.Axis, Text($"{last.Target:0.000}"), .. Expected(last), .. Expected(next)];

    private static string[] Expected(JointChance c) =>
        [Text($"{c.Clearance:0.000}"), Text($"{2 * c.Uncertainty:0.000}"), Text($"{100 * c.OnTarget:0} %")];

    private static string Limit(ColumnLimit limit, ColumnSurvival? columns) =>
        Bracketed(columns) ? Text($"{limit.Diameter:0.00}")
        : columns!.Lost == 0 ? Text($"< {limit.High:0.00}")
        : Text($"> {limit.Low:0.00}");

    private static string[] Row(CurvePoint p, ColumnSurvival? columns) =>
        [
            Text($"{p.Rest:0.0}"),
            Text($"{p.Time:0.00}"),
            Text($"{p.Low:0.00} to {p.High:0.00}"),
            p.Columns is { } c ? Limit(c, columns) : "-",
            p.PrintThrough is { } z ? Text($"{z:0.00}") : "-",
            Text($"{p.PrintTime / 60:0}"),
        ];

    private static JsonNode Point(CurvePoint p, ColumnSurvival? columns)
    {
        var point = new JsonObject
        {
            ["rest"] = p.Rest,
            ["time"] = p.Time,
            ["low"] = p.Low,
            ["high"] = p.High,
            ["gain"] = p.Gain,
            ["printTime"] = p.PrintTime,
        };
        if (p.Columns is { } c && Bracketed(columns))
            point["columnLimit"] = c.Diameter;
        if (p.PrintThrough is { } z)
            point["printThrough"] = z;
        return point;
    }

    private static JsonObject Settings(ExposureSettings s) =>
        new()
        {
            ["time"] = s.Time,
            ["rest"] = s.Rest,
            ["edgeOffset"] = s.EdgeOffset,
        };

    private static string Word(NextKind kind) =>
        kind switch
        {
            NextKind.Change => "change",
            NextKind.Confirm => "confirm",
            NextKind.Stop => "stop",
            _ => "nothing-visible",
        };

    private static string Text(FormattableString text) => FormattableString.Invariant(text);
}
