using CalibGeom.Meshes;

namespace CalibGeom.Plates;

/// <summary>A coupon with its place on the plate: turned about its own Z axis, then moved. Immutable.</summary>
/// <param name="Coupon">The coupon.</param>
/// <param name="Label">Its label on this plate, such as <c>A1</c>; empty for a single coupon.</param>
/// <param name="Turn">0 or 90 degrees counter-clockwise.</param>
/// <param name="Shift">How far its own origin was moved, mm; X and Y on the grid.</param>
public sealed record PlacedCoupon(Coupon Coupon, string Label, int Turn, Vector3D Shift)
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

    /// <summary>0 or 90 degrees counter-clockwise.</summary>
    /// <exception cref="ArgumentException">It is another.</exception>
    public int Turn
    {
        get;
        init => field = RequireTurn(value);
    } = RequireTurn(Turn);

    /// <summary>From the coupon's own coordinates to the plate's.</summary>
    public Affine3D Transform => Affine3D.TurnZ(Turn).Then(Affine3D.Shift(Shift));

    /// <summary>Name and label.</summary>
    public string Name => Label.Length > 0 ? $"{Coupon.Name} {Label}" : Coupon.Name;

    /// <summary>The triangles in plate coordinates.</summary>
    public TriangleMesh ToMesh() => Coupon.Mesh.Transform(Transform);

    /// <summary>The box round it in plate coordinates, mm.</summary>
    public Box3D Bounds
    {
        get
        {
            Vector3D one = Transform.Apply(Coupon.Bounds.Min),
                other = Transform.Apply(Coupon.Bounds.Max);
            return new(
                new(Math.Min(one.X, other.X), Math.Min(one.Y, other.Y), one.Z),
                new(Math.Max(one.X, other.X), Math.Max(one.Y, other.Y), other.Z)
            );
        }
    }

    /// <summary>
    /// What to measure in the printer's axes, with the label as prefix (<c>A1/box1.outside.x</c>); none when the coupon
    /// has no features.
    /// </summary>
    public IEnumerable<Feature> Features => Coupon.Features is { } own ? FeaturesOf(own, Label, Turn) : [];

    /// <summary>
    /// The features of a coupon as it stands on a plate: x and y are the printer's, whatever way it is turned, and the
    /// label is their prefix.
    /// </summary>
    /// <param name="own">The features of the coupon alone.</param>
    /// <param name="label">Its label; may be empty.</param>
    /// <param name="turn">0 or 90 degrees.</param>
    public static IEnumerable<Feature> FeaturesOf(FeatureTable own, string label, int turn)
    {
        ArgumentNullException.ThrowIfNull(own);
        return own.Select(f => TurnedFeature.Of(f, turn).On(label));
    }

    private static int RequireTurn(int turn) =>
        turn is 0 or 90
            ? turn
            : throw new ArgumentException(
                FormattableString.Invariant($"The turn of a coupon must be 0 or 90 degrees, not {turn}."),
                nameof(Turn)
            );
}
