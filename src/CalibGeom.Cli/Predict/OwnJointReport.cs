using System.Globalization;
using CalibGeom.Cli.Shared;
using CalibGeom.Verification.Clearances;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Cli.Predict;

/// <summary>A joint of the user's own as text.</summary>
internal static class OwnJointReport
{
    internal static void Write(TextWriter writer, OwnJoint own)
    {
        writer.WriteLine();
        List<string[]> rows =
        [
            ["your joint, mm", "clearance per side", "+-", "peg", "+-", "hole", "+-", "grades"],
        ];
        foreach (OwnJointAxis a in own.Axes)
            rows.Add([
                a.Axis.ToUpperInvariant(),
                PredictReport.Mm(a.Clearance.Value),
                PredictReport.Mm(a.Clearance.Expanded),
                PredictReport.Mm(a.Peg.Value),
                PredictReport.Mm(a.Peg.Expanded),
                PredictReport.Mm(a.Hole.Value),
                PredictReport.Mm(a.Hole.Expanded),
                $"{Grade(a.PegGrade)}/{Grade(a.HoleGrade)}",
            ]);
        TextTable.Write(writer, rows);
        string fits = string.Join(
            ", ",
            Enum.GetValues<FeltFit>().Select(f => $"{PredictionText.Word(f)} {PredictReport.Percent(own.Fits[f])}")
        );
        writer.WriteLine($"enters {PredictReport.Percent(own.ProbabilityEnters)}; {fits}");
        if (own.IsoFits.Count > 0)
            writer.WriteLine(Iso(own));
        writer.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"for {own.Wanted:0.000} mm per side: a hole of {own.HoleForWanted:0.000} with this peg, or a "
                    + $"peg of {own.PegForWanted:0.000} with this hole"
            )
        );
        if (own.Axes.Count > 1 && own.Axes.Max(a => a.HoleForWanted) - own.Axes.Min(a => a.HoleForWanted) >= 0.0005)
            writer.WriteLine(
                "by axis: "
                    + string.Join(
                        "; ",
                        own.Axes.Select(a =>
                            string.Create(
                                CultureInfo.InvariantCulture,
                                $"{a.Axis.ToUpperInvariant()} hole {a.HoleForWanted:0.000} or peg "
                                    + $"{a.PegForWanted:0.000}"
                            )
                        )
                    )
            );
    }

    private static string Iso(OwnJoint own)
    {
        var likely = own
            .IsoFits.Where(f => f.Probability >= 0.05)
            .Take(3)
            .Select(f => $"{f.Fit} {PredictReport.Percent(f.Probability)}")
            .ToArray();
        return likely.Length > 0
            ? $"within the clearances of ISO 286 fits: {string.Join(", ", likely)}"
            : "outside the clearances of all eleven preferred ISO 286 fits";
    }

    private static string Grade(int? grade) => grade is { } n ? $"IT{n}" : "-";
}
