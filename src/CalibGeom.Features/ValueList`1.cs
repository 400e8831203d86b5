using System.Collections;
using System.Collections.Immutable;
using System.Globalization;
using System.Runtime.CompilerServices;

namespace CalibGeom.Features;

/// <summary>
/// An immutable list that compares by its entries, so that records holding one compare by value. Write it as a
/// collection expression: <c>Sizes = [8.0, 11.2]</c>. Safe to share between threads.
/// </summary>
/// <typeparam name="T">The entries' type.</typeparam>
[CollectionBuilder(typeof(ValueList), nameof(ValueList.Of))]
public sealed class ValueList<T> : IReadOnlyList<T>, IEquatable<ValueList<T>>
    where T : IEquatable<T>
{
    private readonly ImmutableArray<T> entries;

    internal ValueList(ImmutableArray<T> entries) => this.entries = entries;

    /// <inheritdoc/>
    public int Count => entries.Length;

    /// <inheritdoc/>
    public T this[int index] => entries[index];

    /// <summary>The entries as a span.</summary>
    public ReadOnlySpan<T> AsSpan() => entries.AsSpan();

    /// <summary>Whether the other list has equal entries in the same order.</summary>
    /// <param name="other">The other list.</param>
    public bool Equals(ValueList<T>? other) =>
        other is not null && entries.AsSpan().SequenceEqual(other.entries.AsSpan());

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as ValueList<T>);

    /// <inheritdoc/>
    public override int GetHashCode()
    {
        var hash = default(HashCode);
        foreach (T entry in entries)
            hash.Add(entry);
        return hash.ToHashCode();
    }

    /// <summary>The entries in brackets, in the invariant culture.</summary>
    public override string ToString() =>
        $"[{string.Join(", ", entries.Select(e => Convert.ToString(e, CultureInfo.InvariantCulture)))}]";

    /// <inheritdoc/>
    public IEnumerator<T> GetEnumerator() => ((IEnumerable<T>)entries).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
