using CalibGeom.Verification.Maps;
using CalibGeom.Verification.Tests.Uncertainty;
using CalibGeom.Verification.Trends;
using CalibGeom.Verification.Uncertainty;
using FsCheck.Xunit;
using Xunit.Abstractions;

namespace CalibGeom.Verification.Tests.Maps;

/// <summary>Maps of plates whose light is known.</summary>
public class LightMapTests(ITestOutputHelper output)
{
    private static int Runs(int otherwise) =>
        int.TryParse(Environment.GetEnvironmentVariable("CALIBGEOM_RUNS"), out int runs) ? runs : otherwise;

    private static MapPoint Exact(string name, double x, double y, double light) =>
        new(
            name,
            x,
            y,
            [
                new GaugeValue(Gauge.Growth, "x", 0.02 + 0.035 * light, 0.0005),
                new GaugeValue(Gauge.Growth, "y", 0.01 + 0.035 * light, 0.0005),
                new GaugeValue(Gauge.PrintThrough, "z", 0.3 + 0.12 * light, 0.002),
            ]
        );

    [Fact]
    public void AnExactPlaneIsFoundToTheLastDigit()
    {
        double Light(double x, double y) => -0.10 + 0.0005 * x - 0.001 * y;
        MapPoint[] points = MapShop.Places(9).Select((p, i) => Exact($"A{i}", p.X, p.Y, Light(p.X, p.Y))).ToArray();
        MapResult map = LightMap.Run(points);
        Assert.True(map.Differs);
        Assert.Equal(SurfaceShape.Plane, map.Shape);
        double mean = points.Average(p => Light(p.X, p.Y));
        Near.Absolute(Light(40, 20) - mean, map.LightAt(40, 20).Value, 1e-9);
        Near.Absolute(-2 * 0.035 * (Light(40, 20) - mean), map.ClearanceChangeAt(40, 20).Value, 1e-9);
        Assert.Equal((-75, 45), (map.WeakestPlaces[0].X, map.WeakestPlaces[0].Y));
        Near.Absolute(1 - Math.Exp(Light(-75, 45) - Light(75, -45)), map.WeakestPlaces[0].Lacks.Value, 1e-9);
    }

    [Fact]
    public void ABowlIsToldFromAPlane()
    {
        double Light(double x, double y) => -((x - 5) * (x - 5) + (y + 3) * (y + 3)) / 40000;
        MapResult map = LightMap.Run(
            MapShop.Places(9).Select((p, i) => Exact($"A{i}", p.X, p.Y, Light(p.X, p.Y))).ToArray()
        );
        Assert.Equal(SurfaceShape.Bowl, map.Shape);
        Near.Absolute(Light(70, 40) - Light(0, 0), map.LightAt(70, 40).Value - map.LightAt(0, 0).Value, 1e-6);
        Assert.Equal((-75, 45), (map.WeakestPlaces[0].X, map.WeakestPlaces[0].Y));
    }

    /// <summary>Brighter towards the outside: no corner is the weakest place, the middle is.</summary>
    [Fact]
    public void ABowlThatIsDarkInsideIsWeakestInTheMiddle()
    {
        double Light(double x, double y) => (x * x + y * y) / 20000;
        MapResult map = LightMap.Run([
            .. MapShop.Places(9).Select((p, i) => Exact($"A{i}", p.X, p.Y, Light(p.X, p.Y))),
        ]);
        Assert.Equal((0, 0), (map.WeakestPlaces[0].X, map.WeakestPlaces[0].Y));
        Near.Absolute(1 - Math.Exp(-Light(75, 45)), map.WeakestPlaces[0].Lacks.Value, 1e-6);
        Assert.True(map.WeakestPlaces[0].Probability > 0.99);
        Assert.StartsWith(
            "Weakest in the middle: 32 %",
            MapWords.Check(map).Single(f => f.Rule == "map-weakest").Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void FourCouponsAtFallingLightGiveOneAnswerThatNamesTheDark()
    {
        // 5.0, 4.6, 4.2 and 3.5 mW/cm2 at the four corners.
        double[] light = [5.0, 4.6, 4.2, 3.5];
        MapPoint[] points = MapShop
            .Places(4)
            .Select((p, i) => Exact($"A{i + 1}", p.X, p.Y, Math.Log(light[i] / 5)))
            .ToArray();
        MapResult map = LightMap.Run(points);
        IReadOnlyList<Finding> answer = MapWords.Check(map);
        Assert.True(map.Differs);
        Assert.Equal((-75, 45), (map.WeakestPlaces[0].X, map.WeakestPlaces[0].Y));
        Assert.Single(answer, f => f.Rule is "map-uneven" or "map-even");
        Assert.Contains(
            answer,
            f => f.Rule == "map-weakest" && f.Message.Contains("back left", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void EvenPlatesAreCalledEven()
    {
        int runs = Runs(150);
        foreach (int count in new[] { 4, 5, 9 })
        foreach (bool bridge in new[] { false, true })
        {
            int claimed = Enumerable
                .Range(0, runs)
                .Count(i =>
                {
                    var random = new SeededRandom((ulong)(1000 * count + i));
                    return LightMap.Run(MapShop.Print(count, (_, _) => 0, bridge, random)).Differs;
                });
            output.WriteLine(
                FormattableString.Invariant(
                    $"| even, {count} coupons{(bridge ? ", bridge" : "")} | {100.0 * claimed / runs:0.0} % |"
                )
            );
            // At most 5 %; three standard deviations of 150 plates.
            Assert.InRange((double)claimed / runs, 0, 0.05 + 3 * Math.Sqrt(0.05 * 0.95 / runs));
        }
    }

    /// <summary>
    /// What is named must hold the weakest place in nine plates of ten. Taken together, since few of a kind are seen;
    /// and it must not be held by naming everything.
    /// </summary>
    [Fact]
    public void LargeDifferencesAreSeenAndTheWeakestPlaceIsAmongTheNamed()
    {
        int runs = Runs(25);
        var all = default(MapCount);
        foreach (double share in Runs(0) > 0 ? new[] { 0.02, 0.05, 0.10, 0.20 } : [0.10, 0.20])
        foreach ((SurfaceShape shape, bool darkInside) in Shapes)
        {
            var some = default(MapCount);
            foreach (bool bridge in new[] { false, true })
            foreach (int coupons in new[] { 4, 5, 9 })
            {
                MapCount one = MapCount.Of(shape, share, coupons, runs, bridge, darkInside);
                Write($"{Name(shape, darkInside, share)}, {coupons} coupons{(bridge ? ", bridge" : "")}", one);
                if (shape == SurfaceShape.Plane && coupons == 9 && bridge && share == 0.20)
                    Assert.True(one.Seen > 0.5 * runs);
                some += one;
            }
            Write($"{Name(shape, darkInside, share)}, together", some);
            all += share >= 0.10 ? some : default;
        }
        Write("10 and 20 %, together", all);
        RequireNineOfTen(all.Held, all.Seen);
        RequireNineOfTen(all.OneRight, all.One);
        Assert.True(all.Seen > 0.15 * all.Plates && all.One > 0.05 * all.Seen && all.Named < 3 * all.Seen);
    }

    [Fact]
    public void FinerReadingsSeeSmallerDifferences()
    {
        int runs = Runs(25);
        MapCount before = default;
        foreach (double u in new[] { 0.0025, 0.00125, 0.000625, 0.0003 })
        {
            MapCount finer = MapCount.Of(SurfaceShape.Plane, 0.10, 9, runs, false, growth: u);
            Write(FormattableString.Invariant($"Plane, 10 %, 9 coupons, growth to {u:0.00000} mm"), finer);
            Assert.True(finer.Seen >= before.Seen);
            before = finer;
        }
        Assert.True(before.Seen > 0.9 * runs && before.One > 0.5 * runs);
    }

    private static (SurfaceShape Shape, bool DarkInside)[] Shapes =>
        [(SurfaceShape.Plane, false), (SurfaceShape.Bowl, false), (SurfaceShape.Bowl, true)];

    private static string Name(SurfaceShape shape, bool darkInside, double share) =>
        FormattableString.Invariant(
            $"{shape}{(shape == SurfaceShape.Plane ? "" : darkInside ? " dark inside" : " dark outside")}, {100 * share:0} %"
        );

    /// <summary>Less three standard errors.</summary>
    private static void RequireNineOfTen(int right, int all) =>
        Assert.True(right >= 0.9 * all - 3 * Math.Sqrt(0.9 * 0.1 * all), $"{right} of {all}");

    private void Write(string plates, MapCount count) => output.WriteLine($"| {plates} | {count}");

    [Property]
    public void SeveralProbabilitiesTogetherAreOne(double[] drawn)
    {
        double[] chances = [.. drawn.Where(double.IsFinite).Select(d => Math.Clamp(Math.Abs(d) % 1, 1e-9, 0.98))];
        if (chances.Length == 0)
            return;
        double together = LightMap.Together(chances);
        Assert.InRange(together, chances.Min() * 0.999, Math.Min(chances.Max() * 1.001, 1));
        // The order is the same to the test, and what is said twice says no more.
        Near.Relative(together, LightMap.Together([.. chances.Reverse()]), 1e-6);
        Near.Relative(together, LightMap.Together([.. chances, .. chances]), 1e-6);
        Assert.True(LightMap.Together([.. chances.Select(c => c / 2)]) < together);
    }

    [Fact]
    public void OneExposureServesAGentlePlaneAndAPartOfASteepOne()
    {
        MapResult Of(double perMm) =>
            LightMap.Run(MapShop.Places(9).Select((p, i) => Exact($"A{i}", p.X, p.Y, perMm * p.X)).ToArray());
        MapResult gentle = Of(0.0008);
        Assert.True(gentle.Differs);
        Assert.Equal(1, gentle.WithinShare, 1e-9);
        Near.Absolute(0, gentle.ExposureChange, 1e-6);
        MapResult steep = Of(0.004);
        Assert.InRange(steep.WithinShare, 0.2, 0.6);
        PlatePart part = steep.Within!.Value;
        // Within 10 % less light of the middle: 2 * 0.10536 / 0.004 mm wide, to the cells of the grid.
        Assert.InRange(part.MaxX - part.MinX, 40, 2 * 0.10536 / 0.004 + 0.01);
        Near.Absolute(90, part.MaxY - part.MinY, 1e-9);
    }

    /// <summary>Counted over the plate: at the new exposure as many places are within the limits as told.</summary>
    [Fact]
    public void TheOneExposureBringsAsManyPlacesWithinTheLimitsAsItSays()
    {
        MapResult bowl = LightMap.Run(
            MapShop.Places(9).Select((p, i) => Exact($"A{i}", p.X, p.Y, -0.00006 * (p.X * p.X + p.Y * p.Y))).ToArray()
        );
        Assert.True(Math.Abs(bowl.ExposureChange) > 0.02 && bowl.WithinShare < 0.95);
        double Share(double change)
        {
            const int Steps = 60;
            int within = 0;
            for (int i = 0; i <= Steps; i++)
            for (int j = 0; j <= Steps; j++)
            {
                double x = bowl.Options.Width * ((double)i / Steps - 0.5),
                    y = bowl.Options.Depth * ((double)j / Steps - 0.5);
                within += Math.Abs(bowl.LightAt(x, y).Value + change) <= -Math.Log(0.9) ? 1 : 0;
            }
            return within / (double)((Steps + 1) * (Steps + 1));
        }
        Near.Absolute(bowl.WithinShare, Share(bowl.ExposureChange), 0.03);
        Assert.True(Share(-bowl.ExposureChange) < bowl.WithinShare - 0.05);
    }

    [Fact]
    public void AJointIsExpectedAtItsPlaceAndAnywhere()
    {
        MapResult map = LightMap.Run(
            MapShop.Places(9).Select((p, i) => Exact($"A{i}", p.X, p.Y, 0.001 * p.X)).ToArray()
        );
        // 0.1 - 2 (0.015 + 0.035 * 0.04) at X 40.
        Near.Absolute(0.1 - 2 * 0.0164, JointOverPlate.Of(map, 20, 20.2, 40, 0).Clearance.Value, 1e-6);
        JointOverPlate anywhere = JointOverPlate.Of(map, 20, 20.2);
        Assert.True(anywhere.Clearance.Low < 0.1 - 2 * (0.015 + 0.035 * 0.075) + 1e-6);
        Assert.True(anywhere.Clearance.High > 0.1 - 2 * (0.015 - 0.035 * 0.075) - 1e-6);
        Assert.Throws<InputException>(() => JointOverPlate.Of(map, 20, 20.2, 80, 0));
    }

    [Fact]
    public void ATiltedPlateIsSeenInTheThicknesses()
    {
        MapPoint[] Plate(double perMm) =>
            MapShop
                .Places(5)
                .Select((p, i) => Exact($"A{i}", p.X, p.Y, 0) with { Thickness = 2.5 + perMm * p.X + 0.002 * (i % 2) })
                .ToArray();
        Assert.False(LightMap.Run(Plate(0)).Level!.Tilted);
        PlateLevel tilted = LightMap.Run(Plate(0.001)).Level!;
        Assert.True(tilted.Tilted);
        Finding LevelOf(double slope) => MapWords.Check(LightMap.Run(Plate(slope))).Single(f => f.Rule == "map-level");
        Assert.Equal(
            (Severity.Note, "The thickness of the plinths shows no tilt of the plate.", ""),
            (LevelOf(0).Severity, LevelOf(0).Message, LevelOf(0).Remedy)
        );
        Finding level = LevelOf(0.001);
        Assert.Equal(Severity.Warning, level.Severity);
        Assert.StartsWith("The first layers are not equally thick: ", level.Message, StringComparison.Ordinal);
        Assert.Equal("Level the plate; where it is too near, the first layers are squeezed.", level.Remedy);
        Near.Absolute(0.15, tilted.AlongX, 0.01);
    }

    [Fact]
    public void TheMaskEvensOutTheLight()
    {
        MapResult map = LightMap.Run(
            MapShop.Places(9).Select((p, i) => Exact($"A{i}", p.X, p.Y, 0.001 * p.X - 0.002 * p.Y)).ToArray()
        );
        var text = new StringWriter();
        CoverageGrid.Write(map, text);
        string[] lines = text.ToString().TrimEnd().Split('\n');
        Assert.Equal("x,y,light,mask", lines[0]);
        double[][] rows = lines
            .Skip(1)
            .Select(l =>
                l.Split(',').Select(v => double.Parse(v, System.Globalization.CultureInfo.InvariantCulture)).ToArray()
            )
            .ToArray();
        Assert.Equal(31 * 31, rows.Length);
        Assert.Equal(1, rows.Max(r => r[2]), 1e-4);
        Assert.All(rows, r => Near.Absolute(rows.Min(q => q[2]), r[2] * r[3], 2e-4));
    }

    [Fact]
    public void TooFewPlacesAreRefusedInPlainWords()
    {
        MapPoint[] two = [Exact("A1", 0, 0, 0), Exact("A2", 10, 0, 0), Exact("A3", 10, 0, 0)];
        Assert.Contains(
            "three places",
            Assert.Throws<InputException>(() => LightMap.Run(two)).Message,
            StringComparison.Ordinal
        );
    }
}
