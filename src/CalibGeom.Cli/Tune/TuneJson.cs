using System.Text.Json.Nodes;
using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Tuning;

namespace CalibGeom.Cli.Tune;

/// <summary>The answer of tune as JSON.</summary>
internal static class TuneJson
{
    internal static JsonObject Of(TuningResult result) =>
        new()
        {
            ["next"] = new JsonObject
            {
                ["kind"] = Word(result.Next.Kind),
                ["reason"] = Words.Hyphened(result.Next.Reason),
                ["settings"] = Settings(result.Next.Settings),
                ["keep"] = Settings(result.Next.Keep),
                ["goalTime"] = result.Next.GoalTime,
                ["goalRest"] = result.Next.GoalRest,
                ["restFromLightOff"] = result.ToType.RestFromLightOff,
                ["pixels"] = result.ToType.Pixels,
                ["scaleX"] = result.ToType.ScaleX,
                ["scaleY"] = result.ToType.ScaleY,
                ["baseLayers"] = result.ToType.BaseLayers,
                ["baseTime"] = result.ToType.BaseTime,
                ["mustBeOff"] = SettingsToType.MustBeOff,
            },
            ["verdict"] = Words.Hyphened(result.Verdict),
            ["onTarget"] = result.Chances.OnTarget,
            ["tight"] = result.Chances.Tight,
            ["loose"] = result.Chances.Loose,
            ["targetGrowth"] = result.TargetGrowth,
            ["response"] = new JsonObject
            {
                ["referenceTime"] = result.Response.ReferenceTime,
                ["growth"] = result.Response.GrowthAtReference,
                ["timeEffect"] = result.Response.TimeEffect,
                ["restEffect"] = result.Response.RestEffect,
                ["restTime"] = result.Response.RestTime,
                ["betweenPrints"] = result.Response.BetweenPrints,
                ["axisDifference"] = result.Response.AxisDifference.Mean,
                ["axisDifferenceUncertainty"] = result.Response.AxisDifference.Uncertainty,
                ["caliperUncertainty"] = result.Response.CaliperBias.Uncertainty,
            },
            ["columns"] = result.Columns is { } columns ? Columns(columns, result.Next.Settings.Time) : null,
            ["slots"] = result.PrintThrough is { } light ? Slots(light, result) : null,
            ["clearances"] = Clearances(result.Clearances),
            ["advisedClearances"] = Clearances(Tuner.ChancesAt(result, result.Next.Settings)),
            ["curve"] = new JsonArray([.. result.Curve.Select(p => Point(p, result.Columns))]),
            ["prints"] = new JsonArray([.. Tuner.History(result).Select(Row)]),
            ["trials"] = result.Trials.Count,
            ["keptApart"] = new JsonArray([
                .. result.KeptApart.Select(k => new JsonObject { ["trial"] = k.Number, ["why"] = k.Why }),
            ]),
        };

    private static JsonArray Clearances(IReadOnlyList<JointChance> chances) =>
        new([
            .. chances.Select(c => new JsonObject
            {
                ["joint"] = c.Joint,
                ["axis"] = c.Axis,
                ["target"] = c.Target,
                ["clearance"] = c.Clearance,
                ["uncertainty"] = c.Uncertainty,
                ["onTarget"] = c.OnTarget,
            }),
        ]);

    private static JsonObject Columns(ColumnSurvival columns, double time)
    {
        ColumnLimit limit = columns.Limit(time);
        return new JsonObject
        {
            ["limit"] = limit.Diameter,
            ["low"] = limit.Low,
            ["high"] = double.IsFinite(limit.High) ? limit.High : null,
            ["nineOfTen"] = columns.Known ? columns.DiameterFor(0.9, time) : null,
            ["tried"] = columns.Count,
            ["lost"] = columns.Lost,
            ["lostLater"] = columns.LostLater,
            ["timeExponent"] = columns.TimeExponent,
        };
    }

    // A comb that is all open or all closed tells a bound only: nothing is handed out then.
    private static JsonObject Slots(PrintThroughResponse light, TuningResult result)
    {
        double time = result.Next.Settings.Time;
        bool told = light.Known || light.Quoted;
        return new JsonObject
        {
            ["known"] = light.Known,
            ["printThrough"] = told ? light.At(time).Mean : null,
            ["uncertainty"] = told ? light.At(time).Uncertainty : null,
            ["penetrationDepth"] = told ? light.PenetrationDepth : null,
            ["curedLayers"] = told ? light.CuredLayers(time, result.Conditions.Layer) : null,
        };
    }

    private static JsonObject Row(TrialRow row) =>
        new()
        {
            ["print"] = row.Number,
            ["settings"] = Settings(row.Settings),
            ["measured"] = row.Measured,
            ["believed"] = row.Believed,
            ["felt"] = new JsonArray([.. row.Felt.Select(f => JsonValue.Create(Words.Hyphened(f)))]),
            ["columnsStood"] = row.Columns?.Number,
            ["columns"] = row.Columns?.Of,
            ["slotsOpen"] = row.Slots?.Number,
            ["slots"] = row.Slots?.Of,
            ["advised"] = row.Advised is { } advised
                ? new JsonObject
                {
                    ["kind"] = Word(advised.Kind),
                    ["reason"] = Words.Hyphened(advised.Reason),
                    ["settings"] = Settings(advised.Settings),
                }
                : null,
        };

    private static JsonObject Point(CurvePoint p, ColumnSurvival? columns)
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
        if (p.Columns?.Diameter is { } half)
            point["columnLimit"] = half;
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

    private static string Word(NextKind kind) => Words.Hyphened(kind);
}
