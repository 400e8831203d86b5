using System.Globalization;
using CalibGeom.Cli.Shared;
using CalibGeom.Verification.Clearances;
using CalibGeom.Verification.Readings;
using static CalibGeom.Cli.Predict.NumberText;

namespace CalibGeom.Cli.Predict;

/// <summary>A joint of the user's own as text.</summary>
internal static class OwnJointReport
{
    internal static void Write(TextWriter writer, OwnJoint own, IsoJoint? iso)
    {
        writer.WriteLine();
        if (iso is not null)
            writer.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{iso.Nominal:0.###} {iso.Fit.Name}: peg {iso.Peg:0.0000} and hole {iso.Hole:0.0000} mm, the middles of "
                        + $"their zones; clearance per side {iso.Limits.Low:0.0000} to {iso.Limits.High:0.0000}"
                )
            );
        List<string[]> rows =
        [
            ["your joint, mm", "gap a side", "+-", "peg", "+-", "hole", "+-", "grades"],
        ];
        foreach (OwnJointAxis a in own.Axes)
            rows.Add([
                a.Axis.ToUpperInvariant(),
                Mm(a.Clearance.Value),
                Mm(a.Clearance.Expanded),
                Mm(a.Peg.Value),
                Mm(a.Peg.Expanded),
                Mm(a.Hole.Value),
                Mm(a.Hole.Expanded),
                $"{a.PegGrade}/{a.HoleGrade}",
            ]);
        TextTable.Write(writer, rows);
        string fits = string.Join(
            ", ",
            Enum.GetValues<FeltFit>().Select(f => $"{PredictionText.Word(f)} {Percent(own.Fits[f])}")
        );
        writer.WriteLine($"enters {Percent(own.ProbabilityEnters)}; {fits}");
        foreach (OwnJointAxis a in own.Axes.Where(a => a.Decision is not null))
            writer.WriteLine($"{a.Axis.ToUpperInvariant()} {PredictionText.Sentence(a.Decision!)}");
        if (own.IsoFits.Count > 0)
            writer.WriteLine(Iso(own));
        writer.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"for {own.Wanted:0.000} mm per side: a hole of {own.HoleForWanted.Value:0.000} with this peg, or a "
                    + $"peg of {own.PegForWanted.Value:0.000} with this hole; each +- {own.HoleForWanted.Expanded:0.000}"
            )
        );
        if (
            own.Axes.Count > 1
            && own.Axes.Max(a => a.HoleForWanted.Value) - own.Axes.Min(a => a.HoleForWanted.Value) >= 0.0005
        )
            writer.WriteLine(
                "by axis: "
                    + string.Join(
                        "; ",
                        own.Axes.Select(a =>
                            string.Create(
                                CultureInfo.InvariantCulture,
                                $"{a.Axis.ToUpperInvariant()} hole {a.HoleForWanted.Value:0.000} or peg "
                                    + $"{a.PegForWanted.Value:0.000}"
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
            .Select(f => $"{f.Fit} {Percent(f.Probability)}")
            .ToArray();
        return likely.Length > 0
            ? $"within the clearances of ISO 286 fits: {string.Join(", ", likely)}"
            : "outside the clearances of all eleven preferred ISO 286 fits";
    }
}
