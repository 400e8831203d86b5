namespace CalibGeom.Cli.Shared;

/// <summary>Findings as lines of text.</summary>
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
        foreach (Finding f in AxisPairs.Join(findings.OrderByDescending(f => f.Severity)))
        {
            string subject = f.Subject.Length > 0 ? $" {f.Subject}:" : "";
            writer.WriteLine($"{Word(f.Severity)} [{f.Rule}]{subject} {f.Message}");
            if (f.Remedy.Length > 0)
                writer.WriteLine($"    {f.Remedy}");
        }
    }
}
