namespace CalibGeom.Cli.Tune;

/// <summary>Names of states as JSON and text have them.</summary>
internal static class Words
{
    /// <summary>Such as <c>on-target</c> of OnTarget.</summary>
    internal static string Hyphened<T>(T state)
        where T : struct, Enum =>
        string.Concat(
            state.ToString().Select((c, i) => (i > 0 && char.IsUpper(c) ? "-" : "") + char.ToLowerInvariant(c))
        );
}
