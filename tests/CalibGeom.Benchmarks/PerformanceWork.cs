namespace CalibGeom.Benchmarks;

/// <summary>A row of the table of docs/performance.md.</summary>
/// <param name="Name">What is done.</param>
/// <param name="Baseline">What it is held against.</param>
/// <param name="Rounds">How often both are timed, in turn.</param>
/// <param name="Prepare">Makes what both need, which is not timed: the work, and its baseline where one can be
/// run here.</param>
internal sealed record PerformanceWork(
    string Name,
    string Baseline,
    int Rounds,
    Func<(Action Work, Action? Baseline)> Prepare
);
