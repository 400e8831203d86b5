using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Tuning;

/// <summary>The curve of rest and exposure that holds the clearance on target.</summary>
internal static class TuningCurve
{
    private const double Step = 0.5,
        Shortest = 0.05;

    internal static IReadOnlyList<CurvePoint> Of(Trial last, Answer answer, TuneOptions options)
    {
        double offset = answer.Next.Settings.EdgeOffset;
        var points = new List<CurvePoint>();
        for (double rest = 0; rest <= options.MostRest + 1e-9; rest += Step)
        {
            double time = answer.Response.TimeFor(answer.Target, rest, offset);
            if (time is < Shortest or > ExposureSettings.Longest)
                continue;
            var settings = new ExposureSettings(time, rest, offset);
            double spread = Math.Exp(
                Coverage.NormalFactor
                    * answer.Response.At(settings, withCaliper: false).Uncertainty
                    / answer.Response.TimeEffect
            );
            points.Add(
                new CurvePoint
                {
                    Rest = rest,
                    Time = time,
                    Low = time / spread,
                    High = time * spread,
                    Gain = answer.Response.RestGain(rest),
                    Columns = answer.Columns?.Limit(time),
                    PrintThrough = answer.Light is { Known: true } light ? light.At(time).Mean : null,
                    PrintTime = last.Cycle.PrintTime(settings, last.Conditions.Layer, options.ProductionHeight),
                }
            );
        }
        return points;
    }
}
