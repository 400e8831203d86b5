namespace CalibGeom.Features.Tests;

public class FeatureTableTests
{
    private static readonly Feature[] Rows =
    [
        new("column1.diameter", 0.25, "mm", "", "") { HeadDiameter = 1.6 },
        new("column1.stood", 3, "stage", "", ""),
        new("joint1.fit", 0.05, "fit", "", ""),
        new("box2.inside.x", 8.1, "mm", "x", ""),
        new("box2.inside.y", 8.2, "mm", "y", ""),
        new("box1.outside.x", 8, "mm", "x", ""),
        new("box1.outside.y", 8, "mm", "y", ""),
        new("slot2.height", 0.2, "mm", "z", ""),
        new("slot1.height", 0.315, "mm", "z", ""),
        new("slots.open", 2, "count", "", ""),
        new("squeeze1.height", 0.1, "mm", "z", ""),
        new("squeeze2.height", 0.25, "mm", "z", ""),
        new("squeeze.open", 2, "count", "", ""),
        new("box1.height", 10, "mm", "z", ""),
        new("span.x", 40, "mm", "x", ""),
    ];

    private static readonly FeatureTable Table = new(Rows, "0123456789abcdef");

    [Fact]
    public void MatesFollowFromTheBoxes() =>
        Assert.Equal(
            [
                new Mate("x", KnownFeatures.BoxOutside(1, "x"), KnownFeatures.BoxInside(2, "x"), 0.05),
                new Mate("y", KnownFeatures.BoxOutside(1, "y"), KnownFeatures.BoxInside(2, "y"), 0.1),
            ],
            Table.Find("joint1.fit")!.Mates
        );

    [Fact]
    public void OpeningsStandInTheOrderOfTheObject()
    {
        Assert.Equal([0.315, 0.2], Table.Find("slots.open")!.Openings);
        Assert.Equal([0.1, 0.25], Table.Find("squeeze.open")!.Openings);
    }

    [Fact]
    public void HeightsThatAreNotKnownAreNotGuessed()
    {
        var table = new FeatureTable(Rows.Where(f => f.Id.Item is not ("slot2" or "squeeze2")));
        Assert.Empty(table.Find("slots.open")!.Openings);
        Assert.Empty(new FeatureTable([Rows[11]])[0].Openings);
        Assert.Empty(new FeatureTable([Rows[2]])[0].Mates);
    }

    [Fact]
    public void GivenMatesAndOpeningsStand()
    {
        var mate = new Mate("", FeatureId.Parse("pin3.diameter"), FeatureId.Parse("hole3.diameter"), 0.1);
        var table = new FeatureTable([
            new Feature("pin3.diameter", 3, "mm", "", ""),
            new Feature("hole3.diameter", 3.2, "mm", "", ""),
            new Feature("pin3.fit", 0.1, "fit", "", "") { Mates = [mate] },
            Rows[9] with
            {
                Openings = [1, 2],
            },
        ]);
        Assert.Equal([mate], table[2].Mates);
        Assert.Equal([1, 2], table[3].Openings);
        Assert.Equal(table, FeatureTableJson.Parse(FeatureTableJson.ToText(table)));
    }

    [Fact]
    public void JsonHoldsEverythingAndCsvAllThatFollowsFromIds()
    {
        Assert.Equal(Table, FeatureTableJson.Parse(FeatureTableJson.ToText(Table)));
        FeatureTable csv = FeatureTableCsv.Parse(FeatureTableCsv.ToText(Table));
        Assert.Equal(Table.Skip(1), csv.Skip(1));
        Assert.Equal(Table[0] with { HeadDiameter = null }, csv[0]);
    }

    [Fact]
    public void TheLoadOfAColumnIsTheSquareOfTheRatio()
    {
        Assert.Equal(1.6 / 0.25 * 1.6 / 0.25, Table[0].LoadRatio, 12);
        Assert.Equal(1, Table[0] with { HeadDiameter = null } is var bare ? bare.LoadRatio : 0);
    }

    [Fact]
    public void CountFirstThenTheWholeThenFacesThenFeelAndWhatMayBreakLast() =>
        Assert.Equal(
            [
                "column1.stood",
                "slots.open",
                "squeeze.open",
                "box1.height",
                "span.x",
                "box1.outside.x",
                "box1.outside.y",
                "box2.inside.x",
                "box2.inside.y",
                "joint1.fit",
                "column1.diameter",
                "slot2.height",
                "slot1.height",
                "squeeze1.height",
                "squeeze2.height",
            ],
            Table.InOrderOfWork().Select(f => f.Id.ToString())
        );

    /// <summary>
    /// The outermost box stays on the plinth and is measured there, whatever stands first in the table.
    /// </summary>
    [Fact]
    public void WhatStaysOnThePlinthIsMeasuredBeforeWhatIsBrokenOff()
    {
        FeatureTable table = new([
            .. new[] { "box1.outside.x", "box2.outside.x", "span.x" }.Select(id => new Feature(id, 8, "mm", "x", "")),
            .. new[] { "A1/box1.outside.x", "A1/box2.height" }.Select(id => new Feature(id, 8, "mm", "x", "")),
        ]);
        Assert.Equal(
            ["box2.outside.x", "span.x", "box1.outside.x", "A1/box1.outside.x"],
            table.InOrderOfWork().Where(f => f.Step == WorkStep.Outside).Select(f => f.Id.ToString())
        );
        Assert.Equal(["box1.outside.x", "A1/box1.outside.x"], table.Where(table.IsLoose).Select(f => f.Id.ToString()));
    }

    [Fact]
    public void ACouponHasItsOwnFeaturesUnderTheIdsOfTheObject()
    {
        var plate = new FeatureTable([
            .. Table.Select(f => f.On("A1")),
            .. Table.Select(f => f.On("B2")),
            new("box1.height", 9, "mm", "z", ""),
        ]);
        Assert.Equal(Table, plate.ForCoupon("A1"));
        Assert.Equal(9, Assert.Single(plate.ForCoupon("")).Nominal);
        Assert.Equal(9, Assert.Single(plate.ForCoupon("C3")).Nominal);
        Assert.Equal("A1/box1.outside.x", plate.Find("A1/joint1.fit")!.Mates[0].Inner.ToString());
    }

    private static Feature Height => Table.Find("box1.height")!;

    [Fact]
    public void AnIdTwiceIsRefused() =>
        Assert.Contains(
            "box1.height stands twice",
            Assert.Throws<ArgumentException>(() => new FeatureTable([Height, Height])).Message,
            StringComparison.Ordinal
        );

    [Theory]
    [InlineData("null", "$.features[0]: null is no feature")]
    [InlineData("""{"feature":"a","nominal":1,"unit":"fit","mates":[null]}""", "$.features[0]: null is no mate")]
    [InlineData(
        """{"feature":"a","nominal":1,"unit":"fit","mates":[{"inner":"b","outer":" ","clearance":0}]}""",
        "$.features[0]: the feature has no id"
    )]
    [InlineData(
        """{"feature":"a","nominal":1,"unit":"fit","mates":[{"inner":"a","outer":"gone.inside.x","clearance":0}]}""",
        "$.features[0].mates: gone.inside.x is a mate of a and stands nowhere"
    )]
    [InlineData("""{"feature":"a","nominal":1,"unit":"mm","headDiameter":0}""", "no diameter above 0")]
    [InlineData("""{"feature":"a","nominal":1,"unit":"count","openings":[-1]}""", "no height above 0")]
    [InlineData("""{"feature":"a","nominal":1,"unit":"mm","faces":"round"}""", "$.features[0].faces (line 1")]
    [InlineData("""{"feature":"a","nominal":1,"unit":"mm","step":2}""", "$.features[0].step (line 1")]
    public void BadDetailsAreRefusedByPlace(string row, string message) =>
        Assert.Contains(
            message,
            Assert.Throws<InputException>(() => FeatureTableJson.Parse($"{{\"features\":[{row}]}}")).Message,
            StringComparison.Ordinal
        );
}
