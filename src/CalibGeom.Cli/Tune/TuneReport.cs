using System.Globalization;
using CalibGeom.Cli.Shared;
using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Tuning;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Cli.Tune;

/// <summary>
/// The answer of tune as text: the order, the numbers to type, the verdict and notes, the prints, the clearances to
/// expect.
/// </summary>
internal static class TuneReport
{
    internal static void Write(TextWriter writer, TuningResult result)
    {
        writer.WriteLine(result.Findings[0].Message);
        writer.WriteLine(result.Findings[0].Remedy);
        writer.WriteLine();
        writer.WriteLine("To type:");
        int width = result.ToType.Lines.Max(l => l.Key.Length);
        foreach ((string name, string value) in result.ToType.Lines)
            writer.WriteLine($"  {name.PadRight(width)}  {value}");
        writer.WriteLine();
        FindingText.Write(writer, result.Findings.Skip(1));
        writer.WriteLine();
        TextTable.Write(
            writer,
            [
                [
                    "print",
                    "exposure s",
                    "rest s",
                    "offset mm",
                    "measured mm",
                    "believed mm",
                    "felt",
                    "columns",
                    "slots",
                    "advised",
                ],
                .. Tuner.History(result).Select(Row),
            ]
        );
        if (result.Clearances.Count > 0)
        {
            writer.WriteLine();
            TextTable.Write(
                writer,
                [
                    ["joint", "axis", "target mm", "as printed last", "+- (95 %)", "as advised", "+- (95 %)"],
                    .. result.Clearances.Zip(Tuner.ChancesAt(result, result.Next.Settings), Row),
                ]
            );
        }
    }

    private static string[] Row(TrialRow row) =>
        [
            Text($"{row.Number}"),
            Text($"{row.Settings.Time:0.###}"),
            Text($"{row.Settings.Rest:0.###}"),
            Text($"{row.Settings.EdgeOffset:+0.000;-0.000;0}"),
            row.Measured is { } m ? Text($"{m:0.000}") : "-",
            row.Believed is { } b ? Text($"{b:0.000}") : "-",
            row.Felt.Count > 0 ? string.Join(", ", row.Felt.Distinct().Select(ReadingWords.Of)) : "-",
            row.Columns?.ToString() ?? "-",
            row.Slots?.ToString() ?? "-",
            row.Advised is { } advised ? Advised(advised) : "-",
        ];

    private static string Advised(NextStep step)
    {
        string word = step.Kind switch
        {
            NextKind.Change => "print",
            NextKind.Confirm => "repeat",
            _ => "keep",
        };
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{word} {step.Settings.Time:0.###} s, rest {step.Settings.Rest:0.###} "
                + $"s, {step.Settings.EdgeOffset:+0.000;-0.000;0}"
        );
    }

    private static string[] Row(JointChance last, JointChance next) =>
        [last.Joint, last.Axis, Text($"{last.Target:0.000}"), .. Expected(last), .. Expected(next)];

    private static string[] Expected(JointChance c) =>
        [Text($"{c.Clearance:0.000}"), Text($"{Coverage.NormalFactor * c.Uncertainty:0.000}")];

    private static string Text(FormattableString text) => FormattableString.Invariant(text);
}
