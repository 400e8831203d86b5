using System.Globalization;
using CalibGeom.Cli.Shared;
using CalibGeom.Verification.Clearances;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Cli.Predict;

/// <summary>The answer of <c>predict</c> as text: the answer in sentences, then what it rests on.</summary>
internal static class PredictReport
{
    internal static void Write(TextWriter writer, PredictAnswer answer, bool budget)
    {
        ClearancePrediction p = answer.Prediction;
        if (answer.Coupon.Length > 0)
            writer.WriteLine($"coupon {answer.Coupon}");
        foreach (string sentence in PredictionText.Sentences(p))
            writer.WriteLine(sentence);
        if (answer.Own is { } own)
            writer.WriteLine(PredictionText.Sentence(own));
        if (p.Joints.Count == 0)
            writer.WriteLine("the object has no joint along a measured axis");
        FindingText.Write(writer, answer.Findings);
        Clearances(writer, p);
        Enters(writer, p);
        Decomposition(writer, p);
        Vertical(writer, p);
        if (answer.Own is not null)
            OwnJointReport.Write(writer, answer.Own);
        Compensation(writer, p);
        Grades(writer, p);
        Advice(writer, p);
        if (budget)
            Budgets(writer, p);
        writer.WriteLine();
    }

    internal static string Mm(double value) => Rounded(value, 3).ToString("0.000", CultureInfo.InvariantCulture);

    /// <summary>Whole percents; the ends are said only where they are reached exactly.</summary>
    internal static string Percent(double probability) =>
        probability switch
        {
            > 0 and < 0.005 => "<1 %",
            > 0.995 and < 1 => ">99 %",
            _ => (100 * probability).ToString("0", CultureInfo.InvariantCulture) + " %",
        };

    private static string Signed(double value, int digits) =>
        Rounded(value, digits).ToString(digits == 3 ? "+0.000;-0.000" : "+0.0;-0.0", CultureInfo.InvariantCulture);

    /// <summary>Without the minus of a zero.</summary>
    private static double Rounded(double value, int digits) => Math.Round(value, digits) + 0.0;

    private static void Clearances(TextWriter writer, ClearancePrediction p)
    {
        if (p.Joints.Count == 0)
            return;
        writer.WriteLine();
        List<string[]> rows =
        [
            [
                "clearance, mm per side",
                "axis",
                "designed",
                "expected",
                "+-",
                "from",
                "to",
                "two faces",
                "+-",
                "model",
                "+-",
                "agree",
            ],
        ];
        foreach (AxisClearance c in p.Joints.SelectMany(j => j.Axes))
            rows.Add([
                $"joint {c.Joint}",
                c.Axis.ToUpperInvariant(),
                Mm(c.Design),
                Mm(c.Clearance.Value),
                Mm(c.Clearance.Expanded),
                Mm(c.Clearance.Interval.Low),
                Mm(c.Clearance.Interval.High),
                c.Direct is null ? "-" : Mm(c.Direct.Value),
                c.Direct is null ? "-" : Mm(c.Direct.Expanded),
                Mm(c.Model.Value),
                Mm(c.Model.Expanded),
                c.Agreement is { } a ? Percent(a) : "-",
            ]);
        TextTable.Write(writer, rows);
        if (p.Joints.SelectMany(j => j.Axes).Select(c => c.Direct).OfType<Estimate>().FirstOrDefault() is { } two)
            writer.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"From two faces alone this instrument gives about "
                        + $"+-{Math.Ceiling(100 * two.Expanded) / 100:0.00} mm per side (95 %, "
                        + $"{two.Expanded:0.000} rounded up)."
                )
            );
    }

    private static void Enters(TextWriter writer, ClearancePrediction p)
    {
        if (p.Joints.Count == 0)
            return;
        writer.WriteLine();
        List<string[]> rows =
        [
            ["probability", "enters", .. Enum.GetValues<FeltFit>().Select(PredictionText.Word), "felt"],
        ];
        foreach (JointPrediction j in p.Joints)
            rows.Add([
                $"joint {j.Number}",
                Percent(j.ProbabilityEnters),
                .. Enum.GetValues<FeltFit>().Select(f => Percent(j.Fits[f])),
                j.Felt.Count > 0 ? string.Join(", ", j.Felt.Select(PredictionText.Word)) : "-",
            ]);
        TextTable.Write(writer, rows);
    }

    private static void Decomposition(TextWriter writer, ClearancePrediction p)
    {
        writer.WriteLine();
        List<string[]> rows =
        [
            ["decomposition", "scale, %", "+-", "chance", "growth, mm per edge", "+-", "chance"],
        ];
        foreach (AxisEstimate a in p.Axes)
            rows.Add(Row(a.Axis.ToUpperInvariant(), a.Scale, a.ScaleProbability, a.Growth, a.GrowthProbability));
        if (p.ScaleDifference is { } s && p.GrowthDifference is { } g)
            rows.Add(Row("X less Y", s.Difference, s.Probability, g.Difference, g.Probability));
        TextTable.Write(writer, rows);
        writer.WriteLine("chance: the probability of a value as far from zero if there were none");
    }

    private static string[] Row(
        string name,
        Estimate scale,
        double scaleChance,
        Estimate growth,
        double growthChance
    ) =>
        [
            name,
            Mm(100 * scale.Value),
            Mm(100 * scale.Expanded),
            Percent(scaleChance),
            Mm(growth.Value),
            Mm(growth.Expanded),
            Percent(growthChance),
        ];

    private static void Vertical(TextWriter writer, ClearancePrediction p)
    {
        if (p.PrintThrough is { } z)
            writer.WriteLine($"print-through: {Between(z)}");
        if (p.Squeeze is { } q)
            writer.WriteLine($"squeezed lowest layers, less print-through: {Between(q)}");
        if (p.HeightScale is { } h)
            writer.WriteLine($"scale of heights: {Mm(100 * h.Value)} % +- {Mm(100 * h.Expanded)}");
    }

    private static string Between(Bracket b) =>
        double.IsFinite(b.High) ? $"between {Mm(b.Low)} and {Mm(b.High)} mm" : $"over {Mm(b.Low)} mm";

    private static void Compensation(TextWriter writer, ClearancePrediction p)
    {
        writer.WriteLine();
        foreach (CompensationAxis c in p.Compensation)
        {
            string pixels = c.EdgeOffsetPixels is { } n
                ? string.Create(CultureInfo.InvariantCulture, $" ({n:+0.00;-0.00} pixels)")
                : "";
            writer.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"to compensate {c.Axis.ToUpperInvariant()}: scale factor {c.ScaleFactor:0.00000}, then "
                        + $"edge offset {c.EdgeOffset:+0.000;-0.000} mm{pixels}"
                )
            );
        }
        bool whole = p.Options.PixelPitch is not null;
        List<string[]> rows =
        [
            ["size, mm", "nominal", "now", "compensated", .. whole ? ["in whole pixels"] : Array.Empty<string>()],
        ];
        foreach (CompensatedSize s in p.CompensatedSizes())
            rows.Add([
                s.Feature,
                Mm(s.Nominal),
                Mm(s.Now),
                Mm(s.Compensated),
                .. s.WholePixels is { } w ? [Mm(w)] : Array.Empty<string>(),
            ]);
        TextTable.Write(writer, rows);
    }

    private static void Grades(TextWriter writer, ClearancePrediction p)
    {
        writer.WriteLine();
        List<string[]> rows =
        [
            ["measured, mm", "nominal", "mean", "deviation", "grade", "residual", "standardised"],
        ];
        foreach (FeatureGrade g in p.Grades)
        {
            FaceResidual? r = p.Residuals.FirstOrDefault(r => r.Feature == g.Feature);
            rows.Add([
                g.Feature,
                Mm(g.Nominal),
                Mm(g.Measured),
                Signed(g.Deviation, 3),
                g.Grade is { } n ? $"IT{n}" : "-",
                r is null ? "-" : Signed(r.Residual, 3),
                r is null ? "-" : Signed(r.Standardised, 1),
            ]);
        }
        TextTable.Write(writer, rows);
        writer.WriteLine(
            p.OverallGrade is { } overall
                ? $"tolerance grade overall: IT{overall}"
                : "tolerance grade overall: none up to IT16"
        );
    }

    private static void Advice(TextWriter writer, ClearancePrediction p)
    {
        IReadOnlyList<Improvement> list = p.Improvements();
        if (list.Count == 0)
            return;
        writer.WriteLine();
        Improvement best = list[0];
        Improvement? simplest = list.Where(i => i.Halves).MinBy(i => i.Action.Length);
        writer.WriteLine(
            simplest is not null
                ? $"to halve the uncertainty: {simplest.Action} (to {Percent(simplest.Ratio)} of it)"
                : $"no single step halves the uncertainty; most would come of this: {best.Action} (to "
                    + $"{Percent(best.Ratio)} of it)"
        );
    }

    private static void Budgets(TextWriter writer, ClearancePrediction p)
    {
        foreach (AxisClearance c in p.Joints.SelectMany(j => j.Axes))
        {
            writer.WriteLine();
            writer.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"budget of joint {c.Joint} in {c.Axis.ToUpperInvariant()}, mm: u "
                        + $"{c.Budget.StandardUncertainty:0.0000}, {c.Budget.DegreesOfFreedom:0} degrees of "
                        + $"freedom, k {c.Budget.CoverageFactor():0.00}"
                )
            );
            writer.Write(c.Budget.ToText());
        }
    }
}
