using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Objects;

/// <summary>An object that later steps know: at least what to measure on it. Immutable.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Features">What to measure.</param>
/// <param name="File">The object itself; null when only its feature table is known.</param>
public sealed record KnownObject(string Name, FeatureTable Features, ObjectFile? File)
{
    /// <summary>What its readings name it by, or null when a table has no digest.</summary>
    public string? Digest => Features.Digest;

    /// <summary>How it is printed, as far as its spec says.</summary>
    public ProcessSpec? Process => File?.Spec.Process;

    /// <summary>An object from its file.</summary>
    /// <param name="file">The file.</param>
    public static KnownObject Of(ObjectFile file)
    {
        ArgumentNullException.ThrowIfNull(file);
        return new KnownObject(file.Name, file.ToFeatures(), file);
    }

    /// <summary>Where a coupon stood, or null when the object stands alone or has no such coupon.</summary>
    /// <param name="label">Its label; empty for a single coupon.</param>
    public ObjectCoupon? Coupon(string label) => File?.Coupons.FirstOrDefault(c => c.Label == label);
}
