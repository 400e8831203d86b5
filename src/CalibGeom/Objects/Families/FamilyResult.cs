namespace CalibGeom.Objects.Families;

/// <summary>What a run made of a family. Immutable.</summary>
/// <param name="Rows">The objects of its part, by number.</param>
/// <param name="Known">How many of them an earlier run had made, and still stand.</param>
/// <param name="Files">Where the index stands, as CSV and as JSON.</param>
public sealed record FamilyResult(IReadOnlyList<FamilyRow> Rows, int Known, IReadOnlyList<string> Files)
{
    /// <summary>How many objects were made now.</summary>
    public int Made => Rows.Count - Known - Failing;

    /// <summary>How many objects cannot work.</summary>
    public int Failing => Rows.Count(r => r.Errors > 0);
}
