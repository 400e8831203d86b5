using CalibGeom.Objects;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Tests.Objects;

public class CouponSetTests
{
    [Fact]
    public void CouponsOfALadderCarryLabelAndTime()
    {
        CouponSet set = CouponSet.Of("search", Presets.Find("search")!.Spec, 3, [1.8, 2.2, 2.6]);
        Assert.Equal(["A1", "A2", "A3"], set.All.Select(c => c.Label));
        Assert.Equal([1.8, 2.2, 2.6], set.All.Select(c => c.Exposure!.Value));
        Assert.Equal(2.2, set.ExposureOf("A2"));
        Assert.Null(set.ExposureOf("B1"));
        // Each has its own letters, so no two surfaces are alike, and more of them than the bare object.
        Assert.Equal(3, set.All.Select(c => c.Coupon.Mesh.Volume).Distinct().Count());
        Assert.All(
            set.All,
            c =>
                Assert.True(
                    c.Coupon.Mesh.Volume
                        > CouponSet.Of("search", Presets.Find("search")!.Spec).All[0].Coupon.Mesh.Volume
                )
        );
    }

    [Fact]
    public void OneCouponIsTheObjectItself()
    {
        CouponSet set = CouponSet.Of("witness", Presets.Witness);
        Assert.Equal(("", null), (Assert.Single(set.All).Label, set.All[0].Exposure));
        Assert.Equal(
            CalibGeom.TestObjects.TestObject.Of(Presets.Witness).ToMesh().Volume,
            set.All[0].Coupon.Mesh.Volume
        );
        Assert.Equal(Presets.All.Select(p => p.Name), set.OtherPresets().Select(c => c.Name));
    }

    [Fact]
    public void AFaultOfTheDesignLeavesNoCoupons()
    {
        CouponSet set = CouponSet.Of(
            "bad",
            Presets.Witness with
            {
                Process = new ProcessSpec { Plate = new PlateSize(20, 20, 20) },
            },
            2
        );
        Assert.True(set.HasErrors);
        Assert.Empty(set.All);
        Assert.Empty(set.OtherPresets());
    }

    [Fact]
    public void WhatCannotBeIsRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => CouponSet.Of("witness", Presets.Witness, 0));
        Assert.Throws<ArgumentException>(() => CouponSet.Of("witness", Presets.Witness, 3, [1.0, 2.0]));
        Assert.Contains(
            "leaves no room for the label A1",
            Assert
                .Throws<InputException>(() =>
                    CouponSet.Of("witness", Presets.Witness with { Title = new string('A', 39) }, 1)
                )
                .Message,
            StringComparison.Ordinal
        );
    }
}
