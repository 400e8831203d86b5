using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Objects;

/// <summary>An object that later steps know: at least what to measure on it. Immutable.</summary>
public sealed class KnownObject
{
    private readonly Lazy<FeatureTable> features;

    /// <summary>An object of which only its feature table is known.</summary>
    /// <param name="name">What it is called.</param>
    /// <param name="features">What to measure.</param>
    public KnownObject(string name, FeatureTable features)
    {
        ArgumentNullException.ThrowIfNull(name);
        ArgumentNullException.ThrowIfNull(features);
        (Name, this.features) = (name, new Lazy<FeatureTable>(features));
    }

    private KnownObject(ObjectFile file) =>
        (Name, File, features) = (file.Name, file, new Lazy<FeatureTable>(file.ToFeatures));

    /// <summary>What it is called.</summary>
    public string Name { get; }

    /// <summary>What to measure; of an object file it is worked out when it is first asked for.</summary>
    public FeatureTable Features => features.Value;

    /// <summary>The object itself; null when only its feature table is known.</summary>
    public ObjectFile? File { get; }

    /// <summary>What its readings name it by, or null when a table has no digest.</summary>
    public string? Digest => File is null ? Features.Digest : File.Digest;

    /// <summary>How it is printed, as far as its spec says.</summary>
    public ProcessSpec? Process => File?.Spec.Process;

    /// <summary>An object from its file.</summary>
    /// <param name="file">The file.</param>
    public static KnownObject Of(ObjectFile file)
    {
        ArgumentNullException.ThrowIfNull(file);
        return new KnownObject(file);
    }

    /// <summary>Where a coupon stood, or null when the object stands alone or has no such coupon.</summary>
    /// <param name="label">Its label; empty for a single coupon.</param>
    public ObjectCoupon? Coupon(string label) => File?.Coupons.FirstOrDefault(c => c.Label == label);
}
