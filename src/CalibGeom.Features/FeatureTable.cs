using System.Collections;

namespace CalibGeom.Features;

/// <summary>
/// What to measure on a test object: features in a fixed order, each id once, and the digest of the spec they come
/// from. It is all that
/// verification needs to know of an object. Immutable and safe to share between threads.
/// </summary>
public sealed class FeatureTable : IReadOnlyList<Feature>
{
    private readonly Feature[] features;
    private readonly Dictionary<string, Feature> byId;

    /// <summary>A feature table.</summary>
    /// <param name="features">The features, each id once.</param>
    /// <param name="digest">The digest of the spec (16 hex digits), or null when it is not known.</param>
    /// <exception cref="ArgumentException">An id stands twice.</exception>
    public FeatureTable(IEnumerable<Feature> features, string? digest = null)
    {
        ArgumentNullException.ThrowIfNull(features);
        this.features = features.ToArray();
        byId = new Dictionary<string, Feature>(StringComparer.Ordinal);
        foreach (Feature feature in this.features)
            if (!byId.TryAdd(feature.Id, feature))
                throw new ArgumentException($"Feature {feature.Id} stands twice.", nameof(features));
        Digest = digest;
    }

    /// <summary>The digest of the spec the features come from, or null when it is not known.</summary>
    public string? Digest { get; }

    /// <inheritdoc/>
    public int Count => features.Length;

    /// <inheritdoc/>
    public Feature this[int index] => features[index];

    /// <summary>The feature with an id, or null.</summary>
    /// <param name="id">Such as <c>box1.outside.x</c>.</param>
    public Feature? Find(string id) => byId.GetValueOrDefault(id);

    /// <inheritdoc/>
    public IEnumerator<Feature> GetEnumerator() => ((IEnumerable<Feature>)features).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
