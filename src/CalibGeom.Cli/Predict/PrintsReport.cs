using System.Globalization;
using CalibGeom.Cli.Shared;
using CalibGeom.Verification.Clearances;
using static CalibGeom.Cli.Predict.NumberText;

namespace CalibGeom.Cli.Predict;

/// <summary>The mean of prints and the next one.</summary>
internal static class PrintsReport
{
    internal static void Write(TextWriter writer, ClearancePrediction p)
    {
        if (p.Joints.Count == 0)
            return;
        writer.WriteLine();
        List<string[]> rows =
        [
            ["prints, mm per side", "axis", "mean", "+-", "next print", "+-", "from", "to"],
        ];
        foreach (AxisClearance c in p.Joints.SelectMany(j => j.Axes))
            rows.Add([
                c.Fit.Spoken,
                c.Axis.ToUpperInvariant(),
                Mm(c.Mean.Value),
                Mm(c.Mean.Expanded),
                Mm(c.Next.Value),
                Mm(c.Next.Expanded),
                Mm(c.Next.Interval.Low),
                Mm(c.Next.Interval.High),
            ]);
        TextTable.Write(writer, rows);
        PrintVariation v = p.Variation;
        string source =
            v.IsSet ? "as set"
            : v.Prints > 1
                ? string.Create(
                    CultureInfo.InvariantCulture,
                    $"learnt from {v.Prints} prints, {v.DegreesOfFreedom:0} degrees of freedom"
                )
            : "assumed: one print does not tell";
        writer.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"growth from print to print: standard deviation {v.StandardDeviation:0.0000} mm ({source})"
            )
        );
    }
}
