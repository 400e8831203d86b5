namespace CalibGeom.Plates;

/// <summary>What every coupon on a plate has to keep to. Immutable and safe to share between threads.</summary>
public sealed record PlacementRules
{
    /// <summary>
    /// The least distance between a coupon and any part, other coupon or the plate's margin, mm; 0.1 to 100, by default
    /// 2.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Out of range, or not a number.</exception>
    public double Gap
    {
        get;
        init =>
            field = value is >= 0.1 and <= 100
                ? value
                : throw new ArgumentOutOfRangeException(nameof(Gap), value, "A gap must be from 0.1 to 100 mm.");
    } = 2;

    /// <summary>
    /// Whether a coupon may stand under a part: then only what lies lower than the coupon and the gap above it is in
    /// the way. By default the whole shadow of a part is.
    /// </summary>
    public bool Under { get; init; }

    /// <summary>Whether coupons stand at z = 0; by default they stand at the lowest point of the parts.</summary>
    public bool StandAtZero { get; init; }

    /// <summary>
    /// Whether coupons may be turned by 90 degrees to find room; the default. They never are where pixels have two
    /// pitches: widths that are whole pixels along X would not be so along Y.
    /// </summary>
    public bool MayTurn
    {
        get => field && (PixelPitch is not { } pitch || pitch.IsUniform);
        init;
    } = true;

    /// <summary>
    /// The size of a pixel on the plate, mm, so that every coupon is moved by whole pixels from the plate's centre;
    /// null (default) moves freely on the grid.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Out of 0.001 to 1 mm.</exception>
    public PerAxis? PixelPitch
    {
        get;
        init =>
            field = value is null or { X: >= 0.001 and <= 1, Y: >= 0.001 and <= 1 }
                ? value
                : throw new ArgumentOutOfRangeException(
                    nameof(PixelPitch),
                    value,
                    "A pixel pitch must be from 0.001 to 1 mm."
                );
    }
}
