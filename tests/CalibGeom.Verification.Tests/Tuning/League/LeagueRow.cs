namespace CalibGeom.Verification.Tests.Tuning.League;

/// <summary>What one row of the league changes of the common hidden printer.</summary>
internal sealed record LeagueRow(string Name)
{
    internal GrowthLaw Law { get; init; } = GrowthLaw.Logarithm;

    /// <summary>Exponent of a stretched rest law; 1 is the plain one.</summary>
    internal double RestStretch { get; init; } = 1;

    internal (double Low, double High) BetweenPrints { get; init; } = (0.005, 0.005);

    /// <summary>Standard deviation of the bias of a growth: as it is, and as the readings declare it.</summary>
    internal (double True, double Declared) Bias { get; init; } = (0.0015, 0.0015);

    internal double Noise { get; init; } = 0.0018;

    internal bool Measured { get; init; } = true;

    /// <summary>The first exposure over the one that is sound.</summary>
    internal double StartFactor { get; init; } = 1;

    /// <summary>Share of the light that is left after each print.</summary>
    internal double LightKept { get; init; } = 1;

    /// <summary>Pixel pitch where offsets move by whole pixels, mm.</summary>
    internal double? Pixel { get; init; }

    internal bool OffsetAllowed { get; init; } = true;

    /// <summary>b of every printer, where the row fixes it, mm.</summary>
    internal double? TimeEffect { get; init; }

    /// <summary>Whether one exposure cures 1.2 to 4 layers at the start.</summary>
    internal bool SoundStart => StartFactor == 1;

    /// <summary>The rows, fixed before the policy was chosen.</summary>
    internal static IReadOnlyList<LeagueRow> All { get; } =
    [
        new("good caliper, declared"),
        new("power law") { Law = GrowthLaw.Power },
        new("saturation") { Law = GrowthLaw.Saturation },
        new("stretched rest") { RestStretch = 0.6 },
        new("between prints 0.003 to 0.012 mm") { BetweenPrints = (0.003, 0.012) },
        new("default caliper, unchecked") { Bias = (0.0047, 0.0047), Noise = 0.0020 },
        new("good caliper, undeclared") { Bias = (0.0015, 0.0047), Noise = 0.0018 },
        new("references read") { Bias = (0.0020, 0.0020), Noise = 0.0020 },
        new("outside faces only") { Bias = (0.0057, 0.0057), Noise = 0.0028 },
        new("felt fits only") { Measured = false },
        new("start twice under") { StartFactor = 0.5 },
        new("start twice over") { StartFactor = 2 },
        new("light falls 4 % a print") { LightKept = 0.96 },
        new("whole-pixel offsets") { Pixel = 0.04 },
        new("steep, b 0.08 mm") { TimeEffect = 0.08 },
        new("no offset allowed") { OffsetAllowed = false },
    ];
}
