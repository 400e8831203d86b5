namespace CalibGeom.Formats;

/// <summary>
/// What a reader does with a fault: strict reading ends with an error, lenient reading counts what was dropped.
/// </summary>
internal sealed class Faults(string name, bool lenient)
{
    private readonly Dictionary<string, (int Count, string First)> kinds = [];
    private readonly List<string> order = [];

    internal string Name => name;

    internal bool Lenient => lenient;

    /// <summary>What was dropped, a sentence for each kind with the count and the first place.</summary>
    internal IReadOnlyList<string> Dropped =>
        [.. order.Select(k => $"{k}: {kinds[k].Count} (first: {kinds[k].First})")];

    /// <summary>A fault in the file.</summary>
    /// <param name="what">What is wrong, as part of a sentence.</param>
    /// <param name="dropped">The kind of thing that lenient reading leaves out.</param>
    /// <param name="line">The line of the file, from 1, where it is a text.</param>
    /// <exception cref="InputException">Reading is strict.</exception>
    internal void Raise(string what, string dropped, int? line = null)
    {
        if (!lenient)
            throw Fatal(what, "Export it again, or read it leniently.", line: line);
        Drop(what, dropped, line);
    }

    /// <summary>Whether something was left out that is damaged, so that the geometry may not be whole.</summary>
    internal bool Damaged { get; private set; }

    /// <summary>Leaves out what is damaged, in lenient reading.</summary>
    internal void Drop(string what, string dropped, int? line = null)
    {
        Damaged = true;
        Remark(what, dropped, line);
    }

    /// <summary>
    /// Something that is left out or passed over and cannot change the geometry; said in strict reading too.
    /// </summary>
    internal void Remark(string what, string dropped, int? line = null)
    {
        if (!kinds.TryGetValue(dropped, out (int Count, string First) seen))
            order.Add(dropped);
        kinds[dropped] = (seen.Count + 1, seen.Count == 0 ? At(line, what) : seen.First);
    }

    /// <summary>A fault that leaves nothing to read.</summary>
    internal InputException Fatal(
        string what,
        string remedy = "Export it again.",
        Exception? cause = null,
        int? line = null
    ) => new(InputIds.Mesh, $"{what}. {remedy}", new InputPlace(name, line), cause);

    private static string At(int? line, string what) =>
        line is not { } number ? what
        : what.Length == 0 ? FormattableString.Invariant($"line {number}")
        : FormattableString.Invariant($"line {number}: {what}");
}
