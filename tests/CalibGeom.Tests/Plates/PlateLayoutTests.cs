using CalibGeom.Formats.ThreeMf;
using CalibGeom.Meshes;
using CalibGeom.Plates;
using static CalibGeom.Tests.Plates.Shapes;

namespace CalibGeom.Tests.Plates;

public class PlateLayoutTests
{
    private const double GridUnit = 1.0 / 8192;

    [Theory]
    [InlineData(PlateLayout.ExactLimit)]
    [InlineData(0)]
    public void AnLLeavesItsNotch(int exactLimit)
    {
        PlatePart part = Part(Box(-30, -30, 0, 30, 0, 20), Box(-30, 0, 0, 0, 30, 20));
        var layout = new PlateLayout(new Plate(60, 60), [part], new PlacementRules(), exactLimit);
        foreach (
            PlacementWish wish in (PlacementWish[])
                [PlacementWish.NearParts, PlacementWish.Corner, PlacementWish.Near(-25, -25)]
        )
        {
            PlacedCoupon placed = Assert.IsType<PlacedCoupon>(
                new PlateLayout(layout.Plate, [part], new PlacementRules(), exactLimit).Place(Coupon(25, 14, 10), wish)
            );
            Box3D box = placed.Bounds;
            Assert.True(box.Min.X >= 2 && box.Min.Y >= 2 && box.Max.X <= 28 && box.Max.Y <= 28, $"{box} for {wish}");
        }
    }

    [Fact]
    public void ACornerOfTheNotchIsReachedExactly()
    {
        var layout = new PlateLayout(new Plate(60, 60), [Part(Box(-30, -30, 0, 30, 0, 20), Box(-30, 0, 0, 0, 30, 20))]);
        PlacedCoupon placed = layout.Place(Coupon(25, 14, 10), PlacementWish.Corner)!;
        Assert.Equal((28, 28, 0), (placed.Bounds.Max.X, placed.Bounds.Max.Y, placed.Turn));
    }

    /// <summary>A wish is for the middle of the coupon, wherever its own origin lies.</summary>
    [Theory]
    [InlineData(0, 0)]
    [InlineData(40, -25)]
    [InlineData(-12, 30)]
    public void WhereACouponHasItsOriginDoesNotMatter(double x, double y)
    {
        var coupon = new Coupon("aside", Box(x - 10, y - 6, 0, x + 10, y + 6, 5));
        foreach ((double wantedX, double wantedY) in new[] { (0.0, 0.0), (20, -10) })
        {
            PlacedCoupon placed = new PlateLayout(new Plate(120, 120), []).Place(
                coupon,
                PlacementWish.Near(wantedX, wantedY)
            )!;
            Assert.Equal(wantedX, (placed.Bounds.Min.X + placed.Bounds.Max.X) / 2, 0.01);
            Assert.Equal(wantedY, (placed.Bounds.Min.Y + placed.Bounds.Max.Y) / 2, 0.01);
            // Either way round would do as well.
            Assert.Equal(0, placed.Turn);
        }
    }

    [Fact]
    public void ACouponThatNothingLooksUpFromHasNoShadow()
    {
        // Two sides of one upright triangle: closed, and without thickness.
        var upright = new TriangleMesh([0, 0, 0, 10, 0, 0, 0, 0, 10], [0, 1, 2, 0, 2, 1]);
        Assert.StartsWith(
            "A coupon without a face that looks up has no shadow.",
            Assert.Throws<ArgumentException>(() => Footprint.BothTurns(upright)).Message,
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData(8, true)]
    [InlineData(8 - 1.0 / 1024, false)]
    public void ACouponStandsUnderABridgeOnlyWhenAllowed(double deck, bool fits)
    {
        PlatePart bridge = Part(
            Box(-30, -15, 0, -25, 15, deck),
            Box(25, -15, 0, 30, 15, deck),
            Box(-30, -15, deck, 30, 15, deck + 3)
        );
        var plate = new Plate(60, 30);
        Assert.Null(new PlateLayout(plate, [bridge]).Place(Coupon(25, 14, 6), PlacementWish.Near(0, 0)));
        var under = new PlateLayout(plate, [bridge], new PlacementRules { Under = true });
        PlacedCoupon? placed = under.Place(Coupon(25, 14, 6), PlacementWish.Near(0, 0));
        Assert.Equal(fits, placed is not null);
        if (fits)
            Assert.Equal(2, PlateMerge.LeastDistance(under), 9);
    }

    [Fact]
    public void NothingStandsInsideAPartThatReachesBelowThePlate()
    {
        PlatePart block = Part(Box(-30, -15, -20, 30, 15, 40));
        var layout = new PlateLayout(
            new Plate(60, 30),
            [block],
            new PlacementRules { Under = true, StandAtZero = true }
        );
        Assert.Null(layout.Place(Coupon(10, 6, 5), PlacementWish.Near(0, 0)));
    }

    [Theory]
    [InlineData(18, 29, true, 0)]
    [InlineData(29, 18, true, 90)]
    [InlineData(18 - GridUnit, 29, false, 0)]
    [InlineData(18, 29 - GridUnit, false, 0)]
    public void ASlotExactlyAsWideAsCouponAndGapsIsFound(double width, double depth, bool found, int turn)
    {
        double x0 = 7.25,
            x1 = x0 + width;
        PlatePart part = Part(
            Box(-40, -30, 0, x0, 30, 9),
            Box(x1, -30, 0, 40, 30, 9),
            Box(x0, -30, 0, x1, 0.5, 9),
            Box(x0, 0.5 + depth, 0, x1, 31, 9)
        );
        var layout = new PlateLayout(new Plate(80, 80), [part]);
        PlacedCoupon? placed = layout.Place(Coupon(14, 25, 8), PlacementWish.NearParts);
        PlacedCoupon? outside = new PlateLayout(new Plate(80, 60), [part]).Place(
            Coupon(14, 25, 8),
            PlacementWish.Near(-20, -20)
        );
        Assert.Equal(found, outside is not null);
        if (!found)
            return;
        Assert.Equal(turn, outside!.Turn);
        Assert.Equal((x0 + 2, 2.5), (outside.Bounds.Min.X, outside.Bounds.Min.Y));
        Assert.NotNull(placed);
    }

    [Fact]
    public void ARingHoldsACouponInside()
    {
        var plate = new Plate(80, 80);
        var layout = new PlateLayout(plate, [Part(Ring(18, 30, 0, 12))]);
        PlacedCoupon placed = layout.Place(Coupon(25, 14, 10), PlacementWish.Near(0, 0))!;
        Assert.Equal((0, 0), (placed.Shift.X, placed.Shift.Y));
        Assert.True(PlateMerge.LeastDistance(layout) >= 2);
        PlacedCoupon? inTight = new PlateLayout(plate, [Part(Ring(16.2, 39, 0, 12))]).Place(
            Coupon(25, 14, 10),
            PlacementWish.Near(0, 0)
        );
        Assert.Null(inTight);
    }

    [Fact]
    public void AHookReachesRoundAPartThatItsBoxWouldHit()
    {
        PlatePart post = Part(Box(0, 0, 0, 20, 20, 9));
        var layout = new PlateLayout(new Plate(60, 60), [post]);
        PlacedCoupon placed = layout.Place(Hook(18, 4, 6), PlacementWish.Near(5, 5))!;
        Assert.True(placed.Shift.X > -3 && placed.Shift.Y > -3, placed.Shift.ToString());
        Assert.True(PlateMerge.LeastDistance(layout) >= 2);
    }

    [Fact]
    public void NearPartsStandsAsCloseAsTheGapAllows()
    {
        var layout = new PlateLayout(
            new Plate(150, 90),
            [Part(Box(-60, -30, 0, -40, 30, 9)), Part(Box(50, 10, 0, 60, 20, 9))]
        );
        Assert.NotNull(layout.Place(Coupon(25, 14, 10), PlacementWish.NearParts));
        Assert.InRange(PlateMerge.LeastDistance(layout), 2, 2.05);
    }

    [Fact]
    public void ACouponMovesInWholePixels()
    {
        var rules = new PlacementRules { PixelPitch = new PerAxis(0.05, 0.034) };
        var layout = new PlateLayout(new Plate(150, 90), [Part(Box(-21.017, -11.013, 0, 13.011, 8.02, 9))], rules);
        foreach (
            PlacementWish wish in (PlacementWish[])
                [PlacementWish.NearParts, PlacementWish.Corner, PlacementWish.Near(40.01, 20.02)]
        )
        {
            PlacedCoupon placed = layout.Place(Coupon(10, 7, 10), wish)!;
            Assert.InRange(Math.Abs(Math.IEEERemainder(placed.Shift.X, 0.05)), 0, GridUnit);
            Assert.InRange(Math.Abs(Math.IEEERemainder(placed.Shift.Y, 0.034)), 0, GridUnit);
        }
        Assert.True(PlateMerge.LeastDistance(layout) >= 2);
    }

    [Fact]
    public void AMapSpreadsOverCornersAndCentre()
    {
        var plate = new Plate(150, 90, margin: 3);
        var layout = new PlateLayout(plate, [Part(Box(-30, 10, 0, 30, 25, 9))]);
        var map = Enumerable.Range(1, 5).Select(i => new LabelledCoupon(Coupon(25, 14, 8), $"A{i}")).ToArray();
        IReadOnlyList<PlacedCoupon> placed = layout.PlaceMap(map)!;
        Assert.Equal(["A1", "A2", "A3", "A4", "A5"], placed.Select(p => p.Label));
        Assert.Equal((-75 + 5, -45 + 5), (placed[0].Bounds.Min.X, placed[0].Bounds.Min.Y));
        Assert.Equal((75 - 5, 45 - 5), (placed[3].Bounds.Max.X, placed[3].Bounds.Max.Y));
        Assert.Equal((0, 0), (placed[4].Shift.X, placed[4].Shift.Y));
        Assert.True(PlateMerge.LeastDistance(layout) >= 2);
    }

    /// <summary>Four columns of three coupons of 25 x 14 with gaps of 2 take 110 x 50 mm, and no less.</summary>
    [Theory]
    [InlineData(12, true)]
    [InlineData(13, false)]
    public void AMapFindsRoomWhereRowsDo(int count, bool room)
    {
        var layout = new PlateLayout(
            new Plate(111, 51),
            [Part(Box(60, 30, 0, 70, 40, 9))],
            new PlacementRules { Gap = 2 }
        );
        var map = Enumerable.Range(1, count).Select(i => new LabelledCoupon(Coupon(25, 14, 8), $"A{i}")).ToArray();
        Assert.Equal(room, layout.HasRoomForMap(map));
        Assert.Empty(layout.Coupons);
        if (room)
            Assert.Equal(12, layout.PlaceMap(map)!.Count);
    }

    /// <summary>
    /// Four columns of three coupons of 25 x 14, as above; three of the twelve are made the other way round and have to
    /// be turned, the others not.
    /// </summary>
    [Fact]
    public void AMapOfTwoSizesTurnsEachSizeForItself()
    {
        var layout = new PlateLayout(
            new Plate(111, 51.2),
            [Part(Box(60, 30, 0, 70, 40, 9))],
            new PlacementRules { Gap = 2 }
        );
        var map = Enumerable
            .Range(1, 12)
            .Select(i => new LabelledCoupon(i < 10 ? Coupon(25, 14, 8) : Coupon(14, 25, 8), $"A{i}"))
            .ToArray();
        IReadOnlyList<PlacedCoupon> placed = layout.PlaceMap(map)!;
        Assert.Equal(12, placed.Count);
        Assert.True(PlateMerge.LeastDistance(layout) >= 2);
    }

    [Theory]
    [InlineData(4)]
    [InlineData(12)]
    public void AMapTurnsNoCouponWherePixelsHaveTwoPitches(int count)
    {
        var layout = new PlateLayout(
            new Plate(113, 55),
            [Part(Box(60, 30, 0, 70, 40, 9))],
            new PlacementRules { Gap = 2, PixelPitch = new PerAxis(0.03, 0.05) }
        );
        var map = Enumerable.Range(1, count).Select(i => new LabelledCoupon(Coupon(25, 14, 8), $"A{i}")).ToArray();
        Assert.All(layout.PlaceMap(map)!, placed => Assert.Equal(0, placed.Turn));
    }

    [Fact]
    public void CouponsThatAreTakenBackLeaveNoShadow()
    {
        var layout = new PlateLayout(new Plate(60, 40), [Part(Box(-5, -5, 0, 5, 5, 9))]);
        PlacedCoupon before = layout.Place(Coupon(20, 10, 8), PlacementWish.Near(-20, -20))!;
        Assert.Null(
            layout.PlaceMap(
                Enumerable.Range(1, 9).Select(i => new LabelledCoupon(Coupon(20, 10, 8), $"A{i}")).ToArray()
            )
        );
        Assert.Equal([before], layout.Coupons);
        // Each corner is as free as it was.
        foreach ((double x, double y) in new[] { (20.0, 20.0), (-20, 20), (20, -20) })
            Assert.NotNull(layout.Place(Coupon(20, 10, 8), PlacementWish.Near(x, y)));
    }

    [Theory]
    [InlineData(1.237, 1.23)]
    [InlineData(1.231, 1.23)]
    [InlineData(1.23, 1.23)]
    [InlineData(0.109, 0.1)]
    public void TheAdvisedGapIsRoundedDown(double widest, double advised) =>
        Assert.Equal(advised, new RoomShortage(20, 10, widest, null, null).AdvisedGap!.Value, 1e-12);

    [Fact]
    public void TheAdvisedGapDoes()
    {
        PlatePart part = Part(Box(-5, -19, 0, 5, 19, 9));
        foreach (double width in new[] { 21.31, 21.9, 22.77, 23.4 })
        {
            Coupon coupon = Coupon(width, width + 1, 8);
            var tight = new PlateLayout(new Plate(60, 40), [part]);
            Assert.Null(tight.Place(coupon, PlacementWish.NearParts));
            double gap = tight.Explain(coupon).AdvisedGap!.Value;
            Assert.Equal(gap, Math.Round(gap, 2));
            Assert.NotNull(
                new PlateLayout(new Plate(60, 40), [part], new PlacementRules { Gap = gap }).Place(
                    coupon,
                    PlacementWish.NearParts
                )
            );
            Assert.Contains(
                FormattableString.Invariant($"It fits with a gap of {gap:0.##} mm."),
                PlacementAdvice.Explain(tight, coupon, []).Remedy,
                StringComparison.Ordinal
            );
        }
    }

    [Fact]
    public void AMapThatDoesNotFitPlacesNothing()
    {
        var layout = new PlateLayout(new Plate(60, 40), [Part(Box(-5, -5, 0, 5, 5, 9))]);
        Assert.Null(
            layout.PlaceMap(
                Enumerable.Range(1, 5).Select(i => new LabelledCoupon(Coupon(25, 14, 8), $"A{i}")).ToArray()
            )
        );
        Assert.Empty(layout.Coupons);
        Assert.NotNull(layout.Place(Coupon(20, 10, 8), PlacementWish.Corner));
    }

    [Fact]
    public void FeaturesCarryTheLabel()
    {
        var coupon = new Coupon(
            "witness",
            Box(0, 0, 0, 1, 1, 1),
            new FeatureTable([new Feature("box1.outside.x", 8, "mm", "x", "outside jaws")])
        );
        Assert.Equal("A1/box1.outside.x", Assert.Single(new PlacedCoupon(coupon, "A1", 0, default).Features).Id);
        Assert.Equal("box1.outside.x", Assert.Single(new PlacedCoupon(coupon, "", 0, default).Features).Id);
    }

    [Fact]
    public void WhatIsMissingIsSaid()
    {
        var layout = new PlateLayout(new Plate(60, 20), [Part(Box(-30, -10, 0, 6, 10, 9))]);
        RoomShortage shortage = layout.Explain(Coupon(25, 14, 10));
        Assert.Equal(20.0 / 25, shortage.LargestScale!.Value, 0.011);
        Assert.InRange(shortage.MissingWidth, 5, 5.3);
        Assert.Null(shortage.WidestGap);
        Assert.Equal(
            1.5,
            new PlateLayout(new Plate(60, 20), [Part(Box(-30, -10, 0, 2, 10, 9))])
                .Explain(Coupon(25, 14, 10))
                .WidestGap!.Value,
            0.02
        );
        Assert.False(layout.HasRoomFor(Coupon(25, 14, 10)));
        Assert.True(layout.HasRoomFor(Coupon(20, 14, 10)));
    }

    [Fact]
    public void ACouponHigherThanThePlateAllowsFindsNoRoom()
    {
        var layout = new PlateLayout(new Plate(60, 60, 9.5), [Part(Box(-3, -3, 0, 3, 3, 9))]);
        Assert.Null(layout.Place(Coupon(10, 10, 10), PlacementWish.Corner));
        Assert.Equal(0.5, layout.Explain(Coupon(10, 10, 10)).TooHigh!.Value, 9);
    }

    /// <summary>Neither a gap nor a place under parts makes a coupon lower.</summary>
    [Fact]
    public void OfACouponThatIsTooHighOnlyTheHeightIsSaid()
    {
        var layout = new PlateLayout(new Plate(60, 60, 9.5), [Part(Box(-3, -3, 0, 3, 3, 9))]);
        Coupon coupon = Coupon(10, 10, 10);
        RoomShortage shortage = layout.Explain(coupon);
        Assert.Equal((null, null), (shortage.WidestGap, shortage.LargestScale));
        Finding said = PlacementAdvice.Explain(layout, coupon, []);
        Assert.Equal("The coupon is 0.5 mm higher than the plate allows.", said.Message);
        Assert.Equal("Take a lower coupon. Check the plate's height.", said.Remedy);
        Assert.Equal((10, 9.5, "mm"), (said.Value, said.Limit, said.Unit));
    }

    /// <summary>A smaller gap also lets a coupon stand under what hangs lower.</summary>
    [Fact]
    public void UnderABridgeTheAdvisedGapIsAlsoThatAbove()
    {
        PlatePart bridge = Part(
            Box(-30, -15, 0, -25, 15, 7.5),
            Box(25, -15, 0, 30, 15, 7.5),
            Box(-30, -15, 7.5, 30, 15, 10.5)
        );
        var rules = new PlacementRules { Under = true };
        Coupon coupon = Coupon(25, 14, 6);
        double gap = new PlateLayout(new Plate(60, 30), [bridge], rules).Explain(coupon).AdvisedGap!.Value;
        Assert.InRange(gap, 1.45, 1.5);
        Assert.NotNull(
            new PlateLayout(new Plate(60, 30), [bridge], rules with { Gap = gap }).Place(
                coupon,
                PlacementWish.NearParts
            )
        );
    }

    [Fact]
    public void TheTokenOfALayoutStopsWhatIsDoneWithIt()
    {
        using var stop = new CancellationTokenSource();
        PlatePart one = PlatePart.Of("one", Box(-3, -3, 0, 3, 3, 9)),
            other = PlatePart.Of("other", Box(0, 0, 0, 6, 6, 9));
        var parts = new PlateLayout(new Plate(60, 60), [one, other], cancellation: stop.Token);
        // Without a part, only what is written can be stopped.
        var alone = new PlateLayout(new Plate(60, 60), [], cancellation: stop.Token);
        alone.Place(Coupon(10, 10, 10), PlacementWish.Corner);
        stop.Cancel();
        Assert.ThrowsAny<OperationCanceledException>(() => parts.FindOverlaps());
        Assert.ThrowsAny<OperationCanceledException>(() => PlateMerge.WriteStl(Stream.Null, alone, "a"));
        Assert.ThrowsAny<OperationCanceledException>(() => PlateMerge.WriteCouponsStl(Stream.Null, alone, "a"));
        Assert.ThrowsAny<OperationCanceledException>(() =>
            PlateMerge.WriteThreeMf(Stream.Null, alone, new ThreeMfContent())
        );
    }

    [Fact]
    public void PartsThatStandInEachOtherAreNamedWithThePlace()
    {
        PlatePart one = PlatePart.Of("one", Box(-3, -3, 0, 3, 3, 9)),
            other = PlatePart.Of("other", Box(1, 0, 2, 6, 6, 12)),
            apart = PlatePart.Of("apart", Box(20, 20, 0, 26, 26, 9));
        Finding found = Assert.Single(new PlateLayout(new Plate(60, 60), [one, other, apart]).FindOverlaps());
        Assert.Equal(("parts-overlap", Severity.Warning, "one"), (found.Rule, found.Severity, found.Subject));
        Assert.Equal("The surfaces of one and other touch or cross, near X 2, Y 1.5, Z 5.5 mm.", found.Message);
        Assert.Equal("Move one of them in the slicer and export both as they will be printed.", found.Remedy);
        Assert.Equal([new FindingPlace(2, 1.5, 5.5, "")], found.Places);
    }

    [Fact]
    public void WhatCannotBeAPlaceIsRefused()
    {
        foreach (double wrong in new[] { double.NaN, double.PositiveInfinity, -1_000_001 })
        {
            Assert.Throws<ArgumentException>(() => new Plate(60, 60) { CentreX = wrong });
            Assert.Throws<ArgumentException>(() => new Plate(60, 60) { CentreY = wrong });
        }
        Coupon coupon = Coupon(10, 10, 10);
        Assert.Throws<ArgumentException>(() => new PlacedCoupon(coupon, "", 45, default));
        Assert.Throws<ArgumentException>(() => new PlacedCoupon(coupon, "", 0, default) with { Turn = 180 });
        Assert.Throws<ArgumentNullException>(() => new PlacedCoupon(null!, "", 0, default));
        Assert.Throws<ArgumentNullException>(() => new PlacedCoupon(coupon, null!, 0, default));
        Assert.Throws<ArgumentNullException>(() => new LabelledCoupon(null!, "A1"));
        Assert.Throws<ArgumentNullException>(() => new LabelledCoupon(coupon, null!));
        PlatePart far = Part(Box(2e6, 0, 0, 2e6 + 10, 10, 9));
        Assert.Throws<InputException>(() => new PlateLayout(new Plate(60, 60), [far]).Centred());
    }

    [Theory]
    [InlineData(-1, 0)]
    [InlineData(0, -1)]
    [InlineData(int.MaxValue, 0)]
    [InlineData(0, int.MaxValue)]
    public void ACellBesideTheShadowMapIsRefused(int column, int row)
    {
        var map = ShadowMap.Of(new Plate(60, 30), Box(-3, -3, 0, 3, 3, 9));
        Assert.Throws<ArgumentException>(() => map.Distance(Math.Min(column, map.Columns), Math.Min(row, map.Rows)));
    }

    [Theory]
    [InlineData(false, 3.5)]
    [InlineData(true, 0)]
    public void ACouponStandsAtTheLowestPointOfThePartsOrAtZero(bool atZero, double z)
    {
        var layout = new PlateLayout(
            new Plate(60, 60),
            [Part(Box(-3, -3, 3.5, 3, 3, 9))],
            new PlacementRules { StandAtZero = atZero }
        );
        var coupon = new Coupon("low", Box(-5, -5, -2, 5, 5, 4));
        Assert.Equal(z, layout.Place(coupon, PlacementWish.Corner)!.Bounds.Min.Z);
    }

    [Fact]
    public void CentredPartsKeepTheirCoordinates()
    {
        var layout = new PlateLayout(new Plate(60, 60), [Part(Box(1000, 500, 0, 1020, 520, 9))]).Centred();
        PlacedCoupon placed = layout.Place(Coupon(14, 10, 8), PlacementWish.Corner)!;
        Assert.Equal((982, 482), (placed.Bounds.Min.X, placed.Bounds.Min.Y));
    }

    [Fact]
    public void AnOpenMeshIsSeen()
    {
        TriangleMesh box = Box(-3, -3, 0, 3, 3, 9);
        var open = new TriangleMesh(box.Coordinates, box.Triangles[3..]);
        int[] flipped = box.Triangles.ToArray();
        (flipped[0], flipped[1]) = (flipped[1], flipped[0]);
        var layout = new PlateLayout(
            new Plate(60, 60),
            [Part(box), Part(open), Part(new TriangleMesh(box.Coordinates, flipped)), Part(box, box)]
        );
        Assert.Equal([true, false, false, true], layout.Surveys.Select(s => s.IsClosed));
        Assert.Equal([12, 11, 12, 24], layout.Surveys.Select(s => s.TriangleCount));
    }
}
