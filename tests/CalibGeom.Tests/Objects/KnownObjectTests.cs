using CalibGeom.Objects;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Tests.Objects;

/// <summary>What is said of an object before it is laid out is what its layout says.</summary>
public class KnownObjectTests
{
    public static TheoryData<string> PresetNames => [.. Presets.All.Select(p => p.Name)];

    [Theory]
    [MemberData(nameof(PresetNames))]
    public void AnObjectsDigestIsThatOfItsTable(string name)
    {
        TestObjectSpec spec = Presets.Find(name)!.Spec;
        KnownObject known = KnownObject.Of(new ObjectFile(name, spec));
        Assert.Equal(SpecDigest.Of(spec), known.Digest);
        Assert.Equal(known.Digest, known.Features.Digest);
    }

    [Fact]
    public void SoItIsForCouponsOnAPlate()
    {
        KnownObject known = KnownObject.Of(
            new ObjectFile("witness", Presets.Witness)
            {
                Coupons = [new ObjectCoupon("A1", -30, 0, 0, 0), new ObjectCoupon("A2", 30, 0, 0, 90)],
            }
        );
        Assert.NotEqual(SpecDigest.Of(Presets.Witness), known.Digest);
        Assert.Equal(known.Digest, known.Features.Digest);
        Assert.Equal(90, known.Coupon("A2")!.Turn);
        Assert.Null(known.Coupon("A3"));
    }

    [Fact]
    public void OfATableNothingElseIsKnown()
    {
        KnownObject known = new("mine", KnownObject.Of(new ObjectFile("witness", Presets.Witness)).Features);
        Assert.Equal(SpecDigest.Of(Presets.Witness), known.Digest);
        Assert.Null(known.File);
        Assert.Null(known.Process);
        Assert.Throws<ArgumentNullException>(() => new KnownObject("mine", null!));
    }
}
