using CalibGeom.Verification.Readings;

namespace CalibGeom.Verification.Clearances;

/// <summary>Whether several sets of readings may stand for several prints of one object.</summary>
internal static class PrintSets
{
    /// <exception cref="InputException">None is given, two are the same, or conditions differ.</exception>
    internal static void RequireComparable(IReadOnlyList<ReadingSet> prints)
    {
        if (prints.Count == 0)
            throw new InputException("There are no readings.");
        for (int i = 0; i < prints.Count; i++)
        for (int j = 0; j < i; j++)
            if (Same(prints[i], prints[j]))
                throw new InputException(
                    $"Prints {j + 1} and {i + 1} have the same readings. A file counts once: read another print, or name "
                        + "the file only once."
                );
        Alike(prints.Select(p => p.Digest), "digest");
        Alike(prints.Select(p => p.State?.ToString()), "state");
        Alike(prints.Select(p => p.Material?.ToString()), "material");
    }

    /// <summary>What was read of the print, wherever it stands: a remark or a gauge more is no other print.</summary>
    private static bool Same(ReadingSet a, ReadingSet b) => Read(a).SequenceEqual(Read(b));

    private static IEnumerable<(FeatureId, ReadingKind, double)> Read(ReadingSet set) =>
        set
            .Readings.Where(r => !r.IsReference)
            .Select(r => (r.Feature, r.Kind, r.Value))
            .OrderBy(r => r.Feature)
            .ThenBy(r => r.Value);

    private static void Alike(IEnumerable<string?> values, string what)
    {
        if (values.Where(v => v is not null).Distinct(StringComparer.Ordinal).Count() > 1)
            throw new InputException(
                $"The files say different things about the {what}. Prints are put together only when they are of the same "
                    + "object in the same conditions; use one file at a time."
            );
    }
}
