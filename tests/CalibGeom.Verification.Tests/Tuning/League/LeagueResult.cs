namespace CalibGeom.Verification.Tests.Tuning.League;

/// <summary>How a policy did with one printer.</summary>
/// <param name="GrowthError">Growth of the settings kept less the target, mm.</param>
/// <param name="ColumnRatio">Their column limit over that of the best settings.</param>
/// <param name="LostMore">Columns lost more than with the best settings, on average.</param>
/// <param name="Layers">Layers that one exposure of them cures.</param>
/// <param name="StartLayers">Layers that one exposure of the first settings cures.</param>
/// <param name="Played">What was played.</param>
internal sealed record LeagueResult(
    double GrowthError,
    double ColumnRatio,
    double LostMore,
    double Layers,
    double StartLayers,
    Played Played
)
{
    internal bool OnGrowth => Math.Abs(GrowthError) <= LeagueTable.GrowthTolerance;

    internal bool Sound => Layers >= LeaguePrinter.LeastLayers - 1e-3;

    internal bool Good => OnGrowth && ColumnRatio <= LeagueTable.ColumnStep;
}
