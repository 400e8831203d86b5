namespace CalibGeom.Plates;

/// <summary>A coupon to be set, with what tells it from others on the plate. Immutable.</summary>
/// <param name="Coupon">What it is.</param>
/// <param name="Label">Its label, such as <c>A1</c>; empty for a single coupon.</param>
/// <param name="Exposure">Its own exposure on a ladder, s; null without one.</param>
public sealed record LabelledCoupon(Coupon Coupon, string Label, double? Exposure = null)
{
    /// <summary>The coupon.</summary>
    /// <exception cref="ArgumentNullException">It is null.</exception>
    public Coupon Coupon
    {
        get;
        init => field = Require.Given(value, nameof(Coupon));
    } = Require.Given(Coupon, nameof(Coupon));

    /// <summary>Its label on the plate, such as <c>A1</c>; empty for a single coupon.</summary>
    /// <exception cref="ArgumentNullException">It is null.</exception>
    public string Label
    {
        get;
        init => field = Require.Given(value, nameof(Label));
    } = Require.Given(Label, nameof(Label));
}
