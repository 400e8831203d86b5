namespace CalibGeom.Benchmarks;

/// <summary>Something whose time and memory are followed while what it works on grows tenfold.</summary>
/// <param name="Name">What is done.</param>
/// <param name="Counted">What grows.</param>
/// <param name="Least">The least number of it.</param>
/// <param name="Prepare">Given a folder and a number, makes the input and gives the work.</param>
internal sealed record GrowthWork(string Name, string Counted, int Least, Func<string, int, Action> Prepare);
