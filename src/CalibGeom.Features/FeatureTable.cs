using System.Collections;

namespace CalibGeom.Features;

/// <summary>
/// What to measure on a test object: features in a fixed order, each id once, and the digest of the spec they come
/// from. It is all that verification needs to know of an object. Immutable and safe to share between threads.
/// </summary>
public sealed class FeatureTable : IReadOnlyList<Feature>
{
    private readonly Feature[] features;
    private readonly Dictionary<FeatureId, Feature> byId = [];

    /// <summary>
    /// A feature table. Mates of joints and heights of slots that are not given follow from the other features where
    /// these are there.
    /// </summary>
    /// <param name="features">The features, each id once.</param>
    /// <param name="digest">The digest of the spec (16 hex digits), or null when it is not known.</param>
    /// <exception cref="ArgumentException">An id stands twice.</exception>
    public FeatureTable(IEnumerable<Feature> features, string? digest = null)
    {
        ArgumentNullException.ThrowIfNull(features);
        this.features = FeatureHabits.Complete(features.ToArray()).ToArray();
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
    /// <param name="id">Its id.</param>
    public Feature? Find(FeatureId id) => byId.GetValueOrDefault(id);

    /// <summary>The feature with an id, or null.</summary>
    /// <param name="id">Such as <c>box1.outside.x</c>.</param>
    public Feature? Find(string id) => FeatureId.TryParse(id) is { } parsed ? Find(parsed) : null;

    /// <summary>
    /// What was designed of one coupon, under the ids of the object alone: its own features, and those without a label
    /// where the coupon has none of its own.
    /// </summary>
    /// <param name="coupon">The coupon's label; empty for what carries none.</param>
    public FeatureTable ForCoupon(string coupon)
    {
        var own = features.Where(f => f.Id.Coupon == coupon).Select(f => f.Id.OfObject).ToHashSet();
        return new FeatureTable(
            features
                .Where(f => f.Id.Coupon == coupon || (f.Id.Coupon.Length == 0 && !own.Contains(f.Id)))
                .Select(f => f.On("")),
            Digest
        );
    }

    /// <summary>
    /// The features in the order of work at the bench: in each step what stays on the plinth before what is broken off,
    /// else as they stand in the table.
    /// </summary>
    public IEnumerable<Feature> InOrderOfWork() => features.OrderBy(f => f.Step).ThenBy(IsLoose);

    /// <summary>
    /// Whether a feature is of a box that is broken off to be measured: each of a nest but the outermost, which has the
    /// highest number and stays on the plinth.
    /// </summary>
    /// <param name="feature">A feature of this table.</param>
    public bool IsLoose(Feature feature)
    {
        ArgumentNullException.ThrowIfNull(feature);
        return feature.Id.Part == KnownFeatures.Box
            && features.Any(f =>
                f.Id.Part == KnownFeatures.Box && f.Id.Coupon == feature.Id.Coupon && f.Id.Number > feature.Id.Number
            );
    }

    /// <inheritdoc/>
    public IEnumerator<Feature> GetEnumerator() => ((IEnumerable<Feature>)features).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
