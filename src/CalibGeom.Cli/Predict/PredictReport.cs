using System.Globalization;
using CalibGeom.Cli.Shared;
using CalibGeom.Verification.Clearances;
using CalibGeom.Verification.Readings;
using static CalibGeom.Cli.Predict.NumberText;

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
        PrintsReport.Write(writer, p);
        DecisionReport.Write(writer, p);
        Decomposition(writer, p);
        Vertical(writer, p);
        if (answer.Own is not null)
            OwnJointReport.Write(writer, answer.Own, answer.Iso);
        CompensationReport.Write(writer, p);
        GradeReport.Write(writer, p);
        Advice(writer, p);
        if (budget)
            Budgets(writer, p);
        writer.WriteLine();
    }

    private static void Clearances(TextWriter writer, ClearancePrediction p)
    {
        if (p.Joints.Count == 0)
            return;
        writer.WriteLine();
        List<string[]> rows =
        [
            ["mm per side", "axis", "design", "expected", "+-", "from", "to", "2 faces", "+-", "model", "+-", "agree"],
        ];
        foreach (AxisClearance c in p.Joints.SelectMany(j => j.Axes))
            rows.Add([
                c.Fit.Spoken,
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
        writer.WriteLine("2 faces, model: by sizes alone; agree: the probability that they differ as much by chance");
        if (p.Joints.SelectMany(j => j.Axes).Select(c => c.Direct).OfType<Estimate>().FirstOrDefault() is { } two)
            writer.WriteLine($"From two faces alone this instrument gives +-{Mm(two.Expanded)} mm per side (95 %).");
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
                j.Fit.Spoken,
                Percent(j.ProbabilityEnters),
                .. Enum.GetValues<FeltFit>().Select(f => Percent(j.Fits[f])),
                j.Felt.Count > 0 ? string.Join(", ", j.Felt.Select(PredictionText.Word)) : "-",
            ]);
        TextTable.Write(writer, rows);
        writer.WriteLine("enters: both clearances above 0; the words: how it will feel, with what fingers differ by");
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
        ModelCheck c = p.Check;
        if (c.DegreesOfFreedom > 0)
            writer.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"fit: chi-square {c.ChiSquare:0.0} for {c.DegreesOfFreedom} degrees of freedom, by chance "
                        + $"{Percent(c.Probability)}; form error {(c.Raised ? "raised to" : "as assumed,")} {Mm(c.FormError)} mm"
                )
            );
        if (p.Burr is { } b)
            writer.WriteLine(
                $"burrs on boxes: {Signed(b.Height.Value)} mm +- {Mm(b.Height.Expanded)}, told from growth to {Percent(b.Told)}"
            );
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
            writer.WriteLine(
                $"squeezed lowest layers by the tab, less print-through: {(q.High > 0 ? Between(q) : "none seen")}"
            );
        if (p.LowestLayers is { } l)
            writer.WriteLine(
                $"lost by the lowest layers, from the plinth: {Mm(l.Lost.Value)} mm +- {Mm(l.Lost.Expanded)}"
            );
        if (p.HeightScale is { } h)
            writer.WriteLine($"scale of heights: {Mm(100 * h.Value)} % +- {Mm(100 * h.Expanded)}");
    }

    private static string Between(Bracket b) =>
        double.IsFinite(b.High) ? $"between {Mm(b.Low)} and {Mm(b.High)} mm" : $"over {Mm(b.Low)} mm";

    private static void Advice(TextWriter writer, ClearancePrediction p)
    {
        IReadOnlyList<Improvement> list = p.Improvements();
        if (list.Count == 0)
            return;
        writer.WriteLine();
        Improvement best = list[0];
        Improvement? simplest = list.Where(i => i.Halves).MinBy(i => i.Effort);
        writer.WriteLine(
            simplest is not null
                ? $"to halve the uncertainty: {simplest.Action} (to {Percent(simplest.Ratio)} of it, by sizes)"
                : $"no single step halves the uncertainty; most would come of this: {best.Action} (to "
                    + $"{Percent(best.Ratio)} of it, by sizes)"
        );
    }

    private static void Budgets(TextWriter writer, ClearancePrediction p)
    {
        foreach (AxisClearance c in p.Joints.SelectMany(j => j.Axes))
        {
            writer.WriteLine();
            writer.WriteLine(
                PredictionText.ResultLine($"{c.Fit.Spoken} in {c.Axis.ToUpperInvariant()}: c", c.Clearance)
            );
            writer.Write(c.Budget.ToText());
        }
    }
}
