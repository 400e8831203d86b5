using System.Globalization;
using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Tuning.Policy;
using static CalibGeom.Verification.Tuning.Words.TuningWords;

namespace CalibGeom.Verification.Tuning.Words;

/// <summary>What the columns say, in diameters that will print.</summary>
internal static class ColumnWords
{
    internal static IEnumerable<Finding> Of(TuningResult result)
    {
        Trial last = result.Trials[^1];
        if (result.Columns is { } columns)
            yield return Limit(result, columns);
        foreach (ColumnOutcome column in ColumnSurvival.OutOfOrder(last))
            yield return Note(
                "out-of-order",
                Text($"A column of {column.Diameter} mm was lost although thinner ones stand."),
                "That is adhesion, dirt or a bubble rather than light. The column limit counts it all the same.",
                column.Id
            );
        int later = last.Columns.Count(c => c.Printed && c.Stood != ColumnStage.Cure);
        if (later > 0)
            yield return Note(
                "lost-later",
                $"{later} of {last.Columns.Count} columns were lost after the plate, in wash or cure.",
                "They are counted as printed: that is handling, not light."
            );
        if (
            result.Columns?.Limit(result.Next.Settings.Time).Diameter is { } half
            && result.Options.Modulus is { } modulus
        )
            foreach (Finding loads in Loads(result, half, modulus))
                yield return loads;
    }

    private static Finding Limit(TuningResult result, ColumnSurvival columns)
    {
        double time = result.Next.Settings.Time;
        if (columns.Lost == 0)
            return Note(
                "column-limit",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"Every column stood, down to {columns.Thinnest:0.00#} mm; "
                        + $"how much thinner ones would is not known."
                )
            );
        if (columns.Lost == columns.Count)
            return Note(
                "column-limit",
                Text(
                    $"Every column was lost, up to {columns.Thickest:0.00#} mm; from where on they print is not known."
                )
            );
        ColumnLimit half = columns.Limit(time);
        string needed = result.Options.WantedColumn is { } wanted
            ? Text($" The {wanted:0.00#} mm you need stand in {100 * columns.Probability(wanted, time):0} % of cases.")
            : "";
        return new Finding(
            "column-limit",
            Severity.Note,
            "",
            string.Create(
                CultureInfo.InvariantCulture,
                $"With {time:0.###} s, columns from {columns.DiameterFor(LightNeed.Stands, time):0.00} "
                    + $"mm will print; {half.Diameter:0.00} mm ({half.Low:0.00} "
                    + $"to {half.High:0.00}) is a coin toss.{needed}"
            ),
            ""
        )
        {
            Value = half.Diameter,
            Unit = "mm",
        };
    }

    private static IEnumerable<Finding> Loads(TuningResult result, double diameter, double modulus)
    {
        double head = result.Trials[^1].Columns.Select(c => c.HeadDiameter).DefaultIfEmpty(0).Max();
        if (head <= diameter)
            yield break;
        var loads = new ColumnLoads(diameter, result.Options.ColumnHeight, head, modulus);
        yield return Note(
            "column-loads",
            string.Create(
                CultureInfo.InvariantCulture,
                $"Its head pulls a column of {diameter:0.00} mm with {loads.LoadRatio:0} "
                    + $"times the load of its own section: a peel pressure of 0.01 "
                    + $"MPa pulls with {loads.PeelStress(0.01):0.00} MPa; it buckles "
                    + $"at {loads.BucklingLoad:0.000} N; 0.01 N across its head "
                    + $"bends its foot with {loads.BendingStress(0.01):0.0} MPa."
            ),
            "For comparison only: strengths of green resin have no usable published table."
        );
    }
}
