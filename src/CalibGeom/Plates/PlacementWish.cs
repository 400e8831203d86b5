namespace CalibGeom.Plates;

/// <summary>Where a coupon should stand, among all places where it may. Immutable.</summary>
public abstract record PlacementWish
{
    private protected PlacementWish() { }

    /// <summary>
    /// As close to a part as the gap allows, and there as close as possible to the middle of all parts; a millimetre
    /// towards a part counts for ten towards the middle.
    /// </summary>
    public static PlacementWish NearParts { get; } = new NearPartsWish();

    /// <summary>
    /// In the corner of the plate that it can come nearest to; of equally near ones front left, front right, back left,
    /// back right.
    /// </summary>
    public static PlacementWish Corner { get; } = new CornerWish();

    /// <summary>With the middle of the coupon nearest to a point.</summary>
    /// <param name="x">mm.</param>
    /// <param name="y">mm.</param>
    /// <exception cref="ArgumentOutOfRangeException">A coordinate is not finite.</exception>
    public static PlacementWish Near(double x, double y)
    {
        if (!double.IsFinite(x))
            throw new ArgumentOutOfRangeException(nameof(x), x, "A point needs finite coordinates.");
        if (!double.IsFinite(y))
            throw new ArgumentOutOfRangeException(nameof(y), y, "A point needs finite coordinates.");
        return new NearPointWish(x, y);
    }
}
