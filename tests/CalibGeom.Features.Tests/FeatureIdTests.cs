using FsCheck.Fluent;
using FsCheck.Xunit;

namespace CalibGeom.Features.Tests;

public class FeatureIdTests
{
    private static readonly FsCheck.Gen<string> Texts = Gen.Elements(
            "box",
            "fan-2b",
            "pin",
            "1",
            "07",
            "12",
            ".",
            ".",
            "/",
            "x",
            "y",
            "z",
            "outside",
            "open",
            " ",
            "\u00B5",
            "\n"
        )
        .ListOf()
        .Select(string.Concat);

    [Theory]
    [InlineData("box1.outside.x", "", "box", 1, "outside", "x")]
    [InlineData("A1/box12.inside.y", "A1", "box", 12, "inside", "y")]
    [InlineData("span.x", "", "span", null, "", "x")]
    [InlineData("plinth.thickness", "", "plinth", null, "thickness", "")]
    [InlineData("column7.stood", "", "column", 7, "stood", "")]
    [InlineData("slots.open", "", "slots", null, "open", "")]
    [InlineData("joint1", "", "joint", 1, "", "")]
    [InlineData("reference.outside.7.995", "", "reference", null, "outside.7.995", "")]
    [InlineData("fan.wall.tip.z", "", "fan", null, "wall.tip", "z")]
    [InlineData("pin0.diameter", "", "pin", 0, "diameter", "")]
    [InlineData("box01.height", "", "box01", null, "height", "")]
    [InlineData("plate/2/box1.height", "plate/2", "box", 1, "height", "")]
    [InlineData("7.height", "", "7", null, "height", "")]
    public void AnIdIsTakenApart(string text, string coupon, string part, int? number, string size, string axis)
    {
        FeatureId id = FeatureId.Parse(text);
        Assert.Equal((coupon, part, number, size, axis), (id.Coupon, id.Part, id.Number, id.Size, id.Axis));
        Assert.Equal(text, id.ToString());
        Assert.Equal(id, FeatureId.Of(part, number, size, axis, coupon));
    }

    [Property(MaxTest = 500)]
    public FsCheck.Property WhatIsParsedIsPrinted() =>
        Prop.ForAll(
            Texts.ToArbitrary(),
            text =>
                FeatureId.TryParse(text) is not { } id
                || (
                    id.ToString() == text
                    && FeatureId.Of(id.Part, id.Number, id.Size, id.Axis, id.Coupon).Equals(id)
                    && id.OfObject.Coupon.Length == 0
                    && id.OfObject.On(id.Coupon).Equals(id)
                    && (id.Coupon.Length > 0 ? id.Coupon + "/" : "") + id.OfObject == text
                )
        );

    [Theory]
    [InlineData("")]
    [InlineData(" ")]
    [InlineData(" box1")]
    [InlineData("box1.")]
    [InlineData(".x")]
    [InlineData("box1..x")]
    [InlineData("/box1")]
    [InlineData("A1/")]
    [InlineData("box1\n")]
    [InlineData("a. .x")]
    public void WhatIsNoIdIsRefused(string text)
    {
        Assert.Null(FeatureId.TryParse(text));
        Assert.Contains("no feature id", Assert.Throws<ArgumentException>(() => FeatureId.Parse(text)).Message);
    }

    [Fact]
    public void TheLimitIsIncluded()
    {
        Assert.NotNull(FeatureId.TryParse(new string('a', FeatureId.MostCharacters)));
        Assert.Null(FeatureId.TryParse(new string('a', FeatureId.MostCharacters + 1)));
        Assert.Null(FeatureId.TryParse(null));
    }

    [Theory]
    [InlineData("box1", null, "outside", "x")]
    [InlineData("box", 1, "outside.x", "")]
    [InlineData("box", -1, "outside", "")]
    [InlineData("", 1, "outside", "")]
    [InlineData("box", 1, "outside", "w")]
    [InlineData("a/b", null, "outside", "")]
    public void WhatWouldReadBackAsSomethingElseIsRefused(string part, int? number, string size, string axis) =>
        Assert.Throws<ArgumentException>(() => FeatureId.Of(part, number, size, axis));

    [Fact]
    public void OurOwnIdsAreSpeltAsInTheTables()
    {
        FeatureId[] ids =
        [
            KnownFeatures.BoxOutside(1, "x"),
            KnownFeatures.BoxInside(2, "y"),
            KnownFeatures.BoxHeight(3),
            KnownFeatures.SpanAlong("x"),
            KnownFeatures.PlinthThickness,
            KnownFeatures.ColumnDiameter(7),
            KnownFeatures.ColumnStood(7),
            KnownFeatures.SlotsOpen,
            KnownFeatures.SlotHeight(3),
            KnownFeatures.SqueezeOpen,
            KnownFeatures.SqueezeHeight(2),
            KnownFeatures.JointFit(1),
        ];
        Assert.Equal(
            "box1.outside.x box2.inside.y box3.height span.x plinth.thickness column7.diameter column7.stood "
                + "slots.open slot3.height squeeze.open squeeze2.height joint1.fit",
            string.Join(' ', ids.Select(i => i.ToString()))
        );
    }

    [Fact]
    public void IdsCompareAndOrderByTheirText()
    {
        FeatureId[] ids =
        [
            .. new[] { "box2.height", "A1/box1.height", "box10.height" }.Select(FeatureId.Parse).Order(),
        ];
        Assert.Equal(["A1/box1.height", "box10.height", "box2.height"], ids.Select(i => i.ToString()));
        Assert.Equal(FeatureId.Parse("box2.height"), KnownFeatures.BoxHeight(2));
        Assert.Equal(KnownFeatures.BoxOutside(1, "x"), KnownFeatures.BoxInside(1, "x").With("outside", "x"));
        Assert.Equal("A1/box2.outside.y", KnownFeatures.BoxOutside(2, "y").On("A1").ToString());
    }
}
