using CalibGeom.Cli.Shared.Terminals;
using Spectre.Console;

namespace CalibGeom.Cli.Shared;

/// <summary>Findings as lines of text, their severity in colour on a terminal.</summary>
internal static class FindingText
{
    internal static string Word(Severity severity) =>
        severity switch
        {
            Severity.Error => "error",
            Severity.Warning => "warning",
            _ => "note",
        };

    /// <summary>Writes findings, errors first, one or two lines each.</summary>
    internal static void Write(TextWriter writer, IEnumerable<Finding> findings)
    {
        PlainWriter plain = PlainWriter.Over(writer);
        foreach (Finding f in AxisPairs.Join(findings.OrderByDescending(f => f.Severity)))
        {
            string subject = f.Subject.Length > 0 ? $" {f.Subject}:" : "";
            plain.WriteLine(Word(f.Severity), Colour(f.Severity), $" [{f.Rule}]{subject} {f.Message}");
            if (f.Remedy.Length > 0)
                plain.WriteLine($"    {f.Remedy}");
        }
    }

    private static Color Colour(Severity severity) =>
        severity switch
        {
            Severity.Error => Color.Red,
            Severity.Warning => Color.Yellow,
            _ => Color.Aqua,
        };
}
