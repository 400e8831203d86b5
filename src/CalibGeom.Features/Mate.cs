namespace CalibGeom.Features;

/// <summary>Two sizes that go into each other along an axis. Immutable.</summary>
/// <param name="Axis"><c>x</c>, <c>y</c>, or empty for what is round.</param>
/// <param name="Inner">The size that goes in: <c>box1.outside.x</c>.</param>
/// <param name="Outer">The size it goes into: <c>box2.inside.x</c>.</param>
/// <param name="Clearance">The designed gap on each side, mm; below 0 where they overlap.</param>
public sealed record Mate(string Axis, FeatureId Inner, FeatureId Outer, double Clearance)
{
    /// <summary>Two sizes as designed, along the axis of the inner one.</summary>
    /// <param name="inner">The size that goes in.</param>
    /// <param name="outer">The size it goes into.</param>
    public static Mate Of(Feature inner, Feature outer)
    {
        ArgumentNullException.ThrowIfNull(inner);
        ArgumentNullException.ThrowIfNull(outer);
        return new Mate(inner.Axis, inner.Id, outer.Id, Math.Round((outer.Nominal - inner.Nominal) / 2, 9));
    }
}
