namespace CalibGeom.Planar;

/// <summary>Values in ascending order, each once.</summary>
internal static class Ascending
{
    /// <summary>The distinct values, sorted: without the table of hashes that a query would fill.</summary>
    internal static T[] Of<T>(IEnumerable<T> values)
        where T : IComparable<T>, IEquatable<T>
    {
        T[] all = [.. values];
        Array.Sort(all);
        int count = 0;
        foreach (T value in all)
            if (count == 0 || !value.Equals(all[count - 1]))
                all[count++] = value;
        return all[..count];
    }
}
