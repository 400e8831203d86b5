using System.Globalization;
using System.Text;
using CalibGeom.Meshes;
using CalibGeom.Plates;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Objects;

/// <summary>
/// Everything that later steps need to know of a mesh that was written: the spec of the test object and, when it stands
/// on a plate with other parts, the places of the coupons and the parts. Immutable.
/// </summary>
public sealed record ObjectFile
{
    /// <summary>What the names of object files end in.</summary>
    public const string Extension = ".object.json";

    /// <summary>An object.</summary>
    /// <param name="name">Its name, such as <c>standard</c>.</param>
    /// <param name="spec">Its spec; of coupons, the spec without a label.</param>
    public ObjectFile(string name, TestObjectSpec spec)
    {
        ArgumentException.ThrowIfNullOrEmpty(name);
        ArgumentNullException.ThrowIfNull(spec);
        (Name, Spec) = (name, spec);
    }

    /// <summary>Its name.</summary>
    public string Name { get; }

    /// <summary>Its spec.</summary>
    public TestObjectSpec Spec { get; }

    /// <summary>The coupons on the plate; none when the object stands alone.</summary>
    public IReadOnlyList<ObjectCoupon> Coupons { get; init; } = [];

    /// <summary>The parts beside them.</summary>
    public IReadOnlyList<ObjectPart> Parts { get; init; } = [];

    /// <summary>The name of the mesh file beside it; empty when that is not known.</summary>
    public string Mesh { get; init; } = "";

    /// <summary>
    /// What readings name it by: that of the spec (<see cref="SpecDigest.Of"/>) when the object stands alone, else the
    /// first 16 hex digits of the SHA-256 of the spec's canonical form, the places of the coupons and their exposures.
    /// </summary>
    public string Digest
    {
        get
        {
            if (Coupons.Count == 0)
                return SpecDigest.Of(Spec);
            byte[] places = Encoding.UTF8.GetBytes(string.Concat(Coupons.Select(Text)));
            return Sha256.ToHex([.. SpecJson.ToCanonicalBytes(Spec), .. places])[..16];
        }
    }

    /// <summary>
    /// The name of the object file that belongs to a mesh file: <c>x.object.json</c> beside <c>x.stl</c>.
    /// </summary>
    /// <param name="mesh">The path of the mesh.</param>
    public static string Beside(string mesh) => Path.ChangeExtension(mesh, Extension);

    /// <summary>The object that a layout's coupons and parts make.</summary>
    /// <param name="name">The coupons' name.</param>
    /// <param name="spec">The coupons' spec without labels.</param>
    /// <param name="layout">The layout with its coupons placed.</param>
    public static ObjectFile Of(string name, TestObjectSpec spec, PlateLayout layout)
    {
        ArgumentNullException.ThrowIfNull(layout);
        return new ObjectFile(name, spec)
        {
            Coupons = layout
                .Coupons.Select(c => new ObjectCoupon(c.Label, c.Shift.X, c.Shift.Y, c.Shift.Z, c.Turn))
                .ToArray(),
        };
    }

    /// <summary>What to measure, with the printer's axes whatever way coupons are turned.</summary>
    public FeatureTable ToFeatures()
    {
        FeatureTable own = TestObject.Of(Spec).Features;
        return Coupons.Count == 0
            ? own
            : new FeatureTable(Coupons.SelectMany(c => PlacedCoupon.FeaturesOf(own, c.Label, c.Turn)), Digest);
    }

    private static string Text(ObjectCoupon c) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"\n{c.Label} {c.X:R} {c.Y:R} {c.Z:R} {c.Turn}{(c.Exposure is { } s ? $" {s:R}" : "")}"
        );

    /// <summary>From the coordinates of a coupon alone to those of the plate.</summary>
    /// <param name="coupon">One of <see cref="Coupons"/>.</param>
    public static Affine3D TransformOf(ObjectCoupon coupon)
    {
        ArgumentNullException.ThrowIfNull(coupon);
        return Affine3D.TurnZ(coupon.Turn).Then(Affine3D.Shift(new(coupon.X, coupon.Y, coupon.Z)));
    }
}
