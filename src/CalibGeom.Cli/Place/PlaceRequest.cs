using CalibGeom.Cli.Shared;

namespace CalibGeom.Cli.Place;

/// <summary>What <c>place</c> is asked for, as written.</summary>
internal sealed record PlaceRequest
{
    internal required string[] Parts { get; init; }

    internal string? Plate { get; init; }

    internal string? Margin { get; init; }

    internal required SpecSource Source { get; init; }

    internal string? SpecPath { get; init; }

    internal bool SpecTakesInput { get; init; }

    internal string At { get; init; } = "near";

    internal string? Count { get; init; }

    internal string? Ladder { get; init; }

    internal string? Gap { get; init; }

    internal string? PixelPitch { get; init; }

    /// <summary>Whether to take what is whole of a damaged part.</summary>
    internal bool Lenient { get; init; }

    internal bool Under { get; init; }

    internal bool Centre { get; init; }

    internal string? Origin { get; init; }

    internal string? Base { get; init; }

    internal bool Alone { get; init; }

    internal string? Picture { get; init; }

    internal required string Output { get; init; }

    internal bool Json { get; init; }

    /// <summary>Whether several coupons are spread over the plate.</summary>
    internal bool IsMap => At == "map";

    /// <summary>Whether nothing stands on the plate but coupons.</summary>
    internal bool CouponsOnly => Alone || Parts.Length == 0;

    internal bool IsThreeMf => Output.EndsWith(".3mf", StringComparison.OrdinalIgnoreCase);
}
