namespace CalibGeom.TestObjects.Specs;

/// <summary>One group of a spec's parameters.</summary>
/// <param name="Name">Its JSON name.</param>
/// <param name="Optional">Whether <c>null</c> leaves it out.</param>
/// <param name="Parameters">Its parameters in order.</param>
internal sealed record SpecGroup(string Name, bool Optional, IReadOnlyList<SpecParameter> Parameters)
{
    /// <summary>What it is, as sentences.</summary>
    internal required string Meaning { get; init; }

    /// <summary>The group with all its defaults.</summary>
    internal required Func<object> Basis { get; init; }

    /// <summary>The parameter with a JSON name, or null.</summary>
    internal SpecParameter? Find(string name) => Parameters.FirstOrDefault(p => p.Name == name);
}
