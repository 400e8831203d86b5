using CalibGeom.Verification.Readings;

namespace CalibGeom.Verification.Clearances;

/// <summary>Whether several sets of readings may stand for several prints of one object.</summary>
internal static class PrintSets
{
    /// <exception cref="InputException">None is given, two are the same, or conditions differ.</exception>
    internal static void RequireComparable(IReadOnlyList<ReadingSet> prints)
    {
        if (prints.Count == 0)
            throw new InputException(InputIds.Question, "There are no readings.");
        if (SamePrints(prints) is { } same)
            throw new InputException(
                InputIds.Question,
                $"Prints {same.First + 1} and {same.Second + 1} have the same readings. A file counts once: read another "
                    + "print, or name the file only once."
            );
        Alike(prints.Select(p => p.Digest), "digest");
        Alike(prints.Select(p => p.State?.ToString()), "state");
        Alike(prints.Select(p => p.Material?.ToString()), "material");
    }

    /// <summary>
    /// The first print that has the readings of one before it, compared only where their sums are the same.
    /// </summary>
    private static (int First, int Second)? SamePrints(IReadOnlyList<ReadingSet> prints)
    {
        var before = new Dictionary<int, List<(int Number, (FeatureId, ReadingKind, double)[] Read)>>();
        for (int i = 0; i < prints.Count; i++)
        {
            (FeatureId, ReadingKind, double)[] read = Read(prints[i]);
            var sum = new HashCode();
            foreach ((FeatureId, ReadingKind, double) r in read)
                sum.Add(r);
            if (
                !before.TryGetValue(
                    sum.ToHashCode(),
                    out List<(int Number, (FeatureId, ReadingKind, double)[] Read)>? alike
                )
            )
                before[sum.ToHashCode()] = alike = [];
            foreach ((int number, (FeatureId, ReadingKind, double)[] other) in alike)
                if (read.AsSpan().SequenceEqual(other))
                    return (number, i);
            alike.Add((i, read));
        }
        return null;
    }

    /// <summary>What was read of the print, wherever it stands: a remark or a gauge more is no other print.</summary>
    private static (FeatureId, ReadingKind, double)[] Read(ReadingSet set) =>
        [
            .. set
                .Readings.Where(r => !r.IsReference)
                .Select(r => (r.Feature, r.Kind, r.Value))
                .OrderBy(r => r.Feature)
                .ThenBy(r => r.Value),
        ];

    private static void Alike(IEnumerable<string?> values, string what)
    {
        if (values.Where(v => v is not null).Distinct(StringComparer.Ordinal).Count() > 1)
            throw new InputException(
                InputIds.Question,
                $"The files say different things about the {what}. Prints are put together only when they are of the same "
                    + "object in the same conditions; use one file at a time."
            );
    }
}
