using System.Globalization;
using CalibGeom.Verification.Clearances;
using CalibGeom.Verification.Decisions;

namespace CalibGeom.Cli.Predict;

/// <summary>Whether joints conform, and how well several prints keep between the limits.</summary>
internal static class DecisionReport
{
    internal static void Write(TextWriter writer, ClearancePrediction p)
    {
        if (p.Options.Limits is null || p.Joints.Count == 0)
            return;
        writer.WriteLine();
        foreach (AxisClearance c in p.Joints.SelectMany(j => j.Axes))
        {
            string name = $"{c.Fit.Spoken} in {c.Axis.ToUpperInvariant()}";
            writer.WriteLine($"{name} {PredictionText.Sentence(c.Decision!)}");
            writer.WriteLine($"  {PredictionText.ResultLine("c", c.Clearance)}");
            if (c.Capability is { } k)
                writer.WriteLine(Say(k));
        }
    }

    private static string Say(Capability k) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"  {k.Count} prints, s {k.StandardDeviation:0.0000} mm with measuring: Cp {k.Cp:0.00} "
                + $"({k.CpInterval.Low:0.00} to {k.CpInterval.High:0.00}), Cpk {k.Cpk:0.00} "
                + $"({k.CpkInterval.Low:0.00} to {k.CpkInterval.High:0.00})"
        );
}
