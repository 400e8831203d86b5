namespace CalibGeom.Cli.Make;

/// <summary>What <c>make</c> is asked for.</summary>
internal sealed record MakeRequest
{
    internal string? SpecPath { get; init; }

    internal string? Preset { get; init; }

    internal IReadOnlyList<string> Assignments { get; init; } = [];

    internal string? Output { get; init; }

    internal bool Json { get; init; }

    internal bool Check { get; init; }
}
