namespace CalibGeom.Verification.Calipers;

/// <summary>Sums of squares of a crossed study with equal cells.</summary>
internal sealed record StudySquares
{
    internal required int Parts { get; init; }

    internal required int Persons { get; init; }

    internal required int Rounds { get; init; }

    internal required double BetweenParts { get; init; }

    internal required double BetweenPersons { get; init; }

    internal required double Interaction { get; init; }

    internal required double Within { get; init; }

    internal static StudySquares Of(IReadOnlyList<IReadOnlyList<IReadOnlyList<double>>> values)
    {
        int parts = values.Count,
            persons = values[0].Count,
            rounds = values[0][0].Count;
        double[][] cells = values.Select(p => p.Select(c => c.Average()).ToArray()).ToArray();
        double grand = cells.Average(p => p.Average());
        double Square(double d) => d * d;
        double byPart = persons * rounds * cells.Sum(p => Square(p.Average() - grand)),
            byPerson = parts * rounds * Enumerable.Range(0, persons).Sum(q => Square(cells.Average(p => p[q]) - grand)),
            byCell = rounds * cells.Sum(p => p.Sum(c => Square(c - grand)));
        return new StudySquares
        {
            Parts = parts,
            Persons = persons,
            Rounds = rounds,
            BetweenParts = byPart,
            BetweenPersons = byPerson,
            Interaction = byCell - byPart - byPerson,
            Within = values.Select((p, i) => p.Select((c, j) => c.Sum(v => Square(v - cells[i][j]))).Sum()).Sum(),
        };
    }
}
