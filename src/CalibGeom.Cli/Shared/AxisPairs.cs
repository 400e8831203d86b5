namespace CalibGeom.Cli.Shared;

/// <summary>Says once what holds along x and along y alike.</summary>
internal static class AxisPairs
{
    private const string AlongX = "along x ",
        AlongY = "along y ";

    /// <summary>The findings in their order; the one along y joins its twin along x.</summary>
    internal static IEnumerable<Finding> Join(IEnumerable<Finding> findings)
    {
        var left = findings.ToList();
        while (left.Count > 0)
        {
            Finding first = left[0];
            left.RemoveAt(0);
            int twin = first.Severity == Severity.Error ? -1 : left.FindIndex(f => AreTwins(first, f));
            if (twin < 0)
                yield return first;
            else
            {
                string subject = first.Subject == left[twin].Subject ? first.Subject : first.Subject + " and .y";
                left.RemoveAt(twin);
                yield return first with
                {
                    Subject = subject,
                    Message = first.Message.Replace(AlongX, "along x and y ", StringComparison.Ordinal),
                };
            }
        }
    }

    private static bool AreTwins(Finding x, Finding y) =>
        x.Rule == y.Rule
        && x.Severity == y.Severity
        && x.Remedy == y.Remedy
        && (x.Axis, y.Axis) == ("x", "y")
        && WithoutAxis(x.Subject) == WithoutAxis(y.Subject)
        && x.Message.Replace(AlongX, AlongY, StringComparison.Ordinal) == y.Message;

    private static string WithoutAxis(string subject) =>
        FeatureId.TryParse(subject) is { Axis: "x" or "y" } id ? id.With(id.Size) : subject;
}
