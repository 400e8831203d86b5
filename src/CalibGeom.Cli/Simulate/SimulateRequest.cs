using CalibGeom.Light;
using CalibGeom.TestObjects;

namespace CalibGeom.Cli.Simulate;

/// <summary>What <c>simulate</c> is asked for.</summary>
/// <param name="Made">The object to print.</param>
/// <param name="Blur">How light spreads.</param>
/// <param name="Light">The light of all layers.</param>
internal sealed record SimulateRequest(TestObject Made, EdgeBlur Blur, LayerLight Light)
{
    internal double Retreat { get; init; }

    internal double Scale { get; init; }

    internal double EdgeOffset { get; init; }

    internal double ColumnLimit { get; init; }

    internal double Squeeze { get; init; }

    /// <summary>Pixel pitch, mm; null for closed forms.</summary>
    internal PerAxis? Pixel { get; init; }

    internal bool Grey { get; init; }

    internal ulong? Seed { get; init; }

    /// <summary>The person with their caliper.</summary>
    internal ulong CaliperSeed { get; init; }

    internal int Repeats { get; init; }

    /// <summary>Where the readings go; - is standard output.</summary>
    internal required string Output { get; init; }

    /// <summary>Where the picture goes; null for none.</summary>
    internal string? Plot { get; init; }

    internal bool Json { get; init; }
}
