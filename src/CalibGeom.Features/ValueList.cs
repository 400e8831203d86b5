using System.Collections.Immutable;

namespace CalibGeom.Features;

/// <summary>Makes <see cref="ValueList{T}"/>s.</summary>
public static class ValueList
{
    /// <summary>A list of the given entries.</summary>
    /// <typeparam name="T">The entries' type.</typeparam>
    /// <param name="entries">The entries, copied.</param>
    public static ValueList<T> Of<T>(ReadOnlySpan<T> entries)
        where T : IEquatable<T> => new(ImmutableArray.Create(entries));

    /// <summary>A list of the given entries.</summary>
    /// <typeparam name="T">The entries' type.</typeparam>
    /// <param name="entries">The entries, copied.</param>
    public static ValueList<T> ToValueList<T>(this IEnumerable<T> entries)
        where T : IEquatable<T> => new([.. entries]);
}
