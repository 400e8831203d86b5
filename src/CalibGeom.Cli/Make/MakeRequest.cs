using CalibGeom.Cli.Shared;

namespace CalibGeom.Cli.Make;

/// <summary>What <c>make</c> is asked for.</summary>
internal sealed record MakeRequest
{
    internal required SpecSource Source { get; init; }

    internal string? Output { get; init; }

    /// <summary>Where the bench sheet goes, or null.</summary>
    internal string? Sheet { get; init; }

    /// <summary>Where the shaded view goes, or null.</summary>
    internal string? Picture { get; init; }

    /// <summary>How many dots mark the object.</summary>
    internal int Mark { get; init; }

    /// <summary>The parameters to vary, as they were given; none makes one object.</summary>
    internal IReadOnlyList<string> Sweeps { get; init; } = [];

    /// <summary>Which part of a family to make, as it was given, or null for all.</summary>
    internal string? Shard { get; init; }

    internal bool Json { get; init; }

    internal bool Check { get; init; }
}
