using CalibGeom.Cli.Shared;
using CalibGeom.Verification.Clearances;
using static CalibGeom.Cli.Predict.NumberText;

namespace CalibGeom.Cli.Predict;

/// <summary>What was measured, its grades and residuals.</summary>
internal static class GradeReport
{
    internal static void Write(TextWriter writer, ClearancePrediction p)
    {
        writer.WriteLine();
        List<string[]> rows =
        [
            ["measured, mm", "nominal", "mean", "deviation", "+-", "grade", "residual", "standardised"],
        ];
        foreach (FeatureGrade g in p.Grades)
        {
            FaceResidual? r = p.Residuals.FirstOrDefault(r => r.Feature == g.Feature);
            rows.Add([
                g.Feature,
                Mm(g.Nominal),
                Mm(g.Measured),
                Signed(g.Deviation),
                Mm(g.Expanded),
                g.Grade?.ToString() ?? "-",
                r is null ? "-" : Signed(r.Residual),
                r is null ? "-" : Signed(r.Standardised, 1) + (r.IsAside ? " left out" : ""),
            ]);
        }
        TextTable.Write(writer, rows);
        if (p.Grades.Any(g => g.Grade is not null))
            writer.WriteLine(
                p.OverallGrade is { } overall
                    ? $"tolerance grade of the gauge faces overall: IT{overall}"
                        + (p.Grades.Any(g => g.Grade is { OrBetter: true } b && b.Grade == overall) ? " or better" : "")
                    : "tolerance grade of the gauge faces overall: none up to IT16"
            );
    }
}
