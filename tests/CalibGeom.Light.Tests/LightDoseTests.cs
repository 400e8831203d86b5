using CalibGeom.Meshes;
using CalibGeom.Planar;
using CalibGeom.Slicing;
using CalibGeom.Tests.Inspection;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace CalibGeom.Light.Tests;

/// <summary>The raster of doses against closed forms.</summary>
public class LightDoseTests
{
    private const double Sigma = 0.02,
        Layer = 0.05;
    private static readonly Vector3D Right = new(1, 0, 0),
        Down = new(0, 0, -1);

    // CHECKS.md 4.3, COMPUTED: growth of a blurred straight edge, in units of sigma. The edge lies on a border of
    // pixels.
    [Theory]
    [InlineData(1.25, -0.841621233573)]
    [InlineData(2, 0)]
    [InlineData(3, 0.430727299295)]
    [InlineData(4, 0.674489750196)]
    [InlineData(6, 0.967421566102)]
    [InlineData(20, 1.64485362695)]
    public void AnEdgeGrowsAsPublished(double ratio, double growth)
    {
        LightDose dose = OneLayer(Shapes.Box(-1, -1, 0, 1, 1, Layer), 0.04, new GaussianBlur(Sigma), ratio);
        Assert.Equal(growth * Sigma, dose.Edge(new(1, 0, Layer), Right, 0.5, 0.5)!.Value, 2e-6);
    }

    // CHECKS.md 4.3, COMPUTED: printed width of a bar in units of sigma; NaN = does not print. A slot obeys the same
    // with Ec/E0 -> 1 - Ec/E0.
    [Theory]
    [InlineData(1, 2, double.NaN)]
    [InlineData(1, 4, 1.925535091)]
    [InlineData(2, 3, 2.817642625)]
    [InlineData(3, 1.5, 2.109214352)]
    [InlineData(4, 6, 5.934840417)]
    [InlineData(6, 2, 5.999999995)]
    public void ABarAndItsSlotPrintAsPublished(double width, double ratio, double printed)
    {
        double half = width * Sigma / 2;
        LightDose bar = OneLayer(Shapes.Box(-half, -1, 0, half, 1, Layer), half, new GaussianBlur(Sigma), ratio);
        LightDose slot = OneLayer(
            Shapes.Join(Shapes.Box(-1, -1, 0, -half, 1, Layer), Shapes.Box(half, -1, 0, 1, 1, Layer)),
            half,
            new GaussianBlur(Sigma),
            ratio / (ratio - 1)
        );
        double? grown = bar.Edge(new(half, 0, Layer), Right, half, 0.5),
            closed = slot.Edge(new(half, 0, Layer), Right * -1, 0.5, half);
        if (double.IsNaN(printed))
        {
            Assert.Null(grown);
            Assert.Null(closed);
            return;
        }
        Assert.Equal(printed * Sigma, 2 * (half + grown!.Value), 5e-6);
        Assert.Equal(printed * Sigma, 2 * (half - closed!.Value), 5e-6);
    }

    [Fact]
    public void GreyLevelsConvergeWithTheSquareOfThePitchBinaryOnesWithThePitch()
    {
        double[] pitches = [0.04, 0.02, 0.01, 0.005];
        double[] grey = Array.ConvertAll(pitches, p => WorstEdgeError(p, true)),
            binary = Array.ConvertAll(pitches, p => WorstEdgeError(p, false));
        for (int i = 0; i < pitches.Length; i++)
        {
            Assert.InRange(binary[i], 0.3 * pitches[i], pitches[i] / 2 + 2e-6);
            // A pixel lit to a share f spreads its light by p^2 f (1 - f) more than the edge in it does: x p^2 f (1 -
            // f) / (2 sigma^2) to first order.
            Assert.InRange(grey[i], 0, 1.3 * 0.67449 * Sigma * pitches[i] * pitches[i] / (8 * Sigma * Sigma));
        }
        for (int i = 1; i < pitches.Length; i++)
        {
            Assert.InRange(grey[i - 1] / grey[i], 3.2, 5);
            Assert.InRange(binary[i - 1] / binary[i], 1.7, 2.3);
        }
    }

    // The edge at 16 places within a pixel, with E0/Ec = 4.
    private static double WorstEdgeError(double pitch, bool grey) =>
        Enumerable
            .Range(0, 16)
            .Max(k =>
            {
                double x = 1 + k / 16.0 * pitch;
                LightDose dose = OneLayer(
                    Shapes.Box(-1, -0.5, 0, x, 0.5, Layer),
                    pitch,
                    new GaussianBlur(Sigma),
                    4,
                    grey
                );
                return Math.Abs(dose.Edge(new(x, 0, Layer), Right, 0.5, 0.5)!.Value - 0.674489750196 * Sigma);
            });

    [Fact]
    public void ARoundColumnConvergesToTheDisc()
    {
        var blur = new GaussianBlur(Sigma);
        double expected = new DiscMask(blur, 0.25).PrintedDiameter(3)!.Value;
        double[] errors =
        [
            .. new[] { 0.02, 0.01, 0.005 }.Select(pitch =>
            {
                LightDose dose = OneLayer(
                    Shapes.Revolve(256, (0, 0), (0.125, 0), (0.125, Layer), (0, Layer)),
                    pitch,
                    blur,
                    3,
                    grey: true
                );
                double mean = Enumerable
                    .Range(0, 16)
                    .Average(k =>
                    {
                        var outward = new Vector3D(Math.Cos(Math.PI * k / 8), Math.Sin(Math.PI * k / 8), 0);
                        return 0.125 + dose.Edge(outward * 0.125 + new Vector3D(0, 0, Layer), outward, 0.1, 0.1)!.Value;
                    });
                return Math.Abs(2 * mean - expected);
            }),
        ];
        Assert.True(
            errors[0] < 0.001 && errors[1] < errors[0] / 2.5 && errors[2] < errors[1] / 2.5,
            string.Join(", ", errors)
        );
    }

    // CHECKS.md 4.3, COMPUTED: Lw = W0 sqrt(2 Cd / Dp), W0 = 2 sigma = 0.125 mm, of a line thin against W0.
    [Theory]
    [InlineData(0.5, 0.125)]
    [InlineData(1, 0.1767766953)]
    [InlineData(3, 0.3061862178)]
    public void AThinLineIsAsWideAsPublished(double depths, double width)
    {
        var beam = new GaussianBlur(0.0625);
        double[] errors =
        [
            .. new[] { 0.04, 0.02, 0.01 }.Select(line =>
            {
                double peak = Math.Exp(depths) / (beam.LineDensity(0) * line);
                LightDose dose = OneLayer(Shapes.Box(-line / 2, -1, 0, line / 2, 1, Layer), line / 2, beam, peak);
                return Math.Abs(2 * dose.Edge(new(0, 0, Layer), Right, 0.1, 0.5)!.Value - width);
            }),
        ];
        Assert.True(
            errors[0] < 0.005 && errors[1] < errors[0] / 3 && errors[2] < errors[1] / 3,
            string.Join(", ", errors)
        );
    }

    // CHECKS.md 4.3, COMPUTED: Dp = 0.15 mm, Ec = 8 mJ/cm2.
    [Theory]
    [InlineData(10, 0.0334715327)]
    [InlineData(20, 0.1374436098)]
    [InlineData(80, 0.3453877639)]
    public void OneExposureCuresToTheWorkingCurve(double exposure, double depth)
    {
        var light = new LayerLight(new WorkingCurve(0.15, 8), exposure, 1, Layer);
        LightDose dose = Expose(Shapes.Box(-1, -1, 0, 1, 1, Layer), 0.05, new GaussianBlur(Sigma), light, false);
        Assert.Equal(depth, dose.Edge(new(0, 0, Layer), Down, 0.5, 0.5)!.Value, 1e-6);
    }

    [Fact]
    public void TwoPrintsGiveTheWorkingCurveBack()
    {
        double Depth(double exposure) =>
            Expose(
                    Shapes.Box(-1, -1, 0, 1, 1, Layer),
                    0.05,
                    new GaussianBlur(Sigma),
                    new LayerLight(new WorkingCurve(0.144269504089, 7.07106781187), exposure, 1, Layer),
                    false
                )
                .Edge(new(0, 0, Layer), Down, 0.5, 0.5)!
                .Value;
        // CHECKS.md 4.3, COMPUTED: doses of 10 and 40 cure 0.05 and 0.25 mm.
        Assert.Equal(0.05, Depth(10), 1e-6);
        WorkingCurve back = WorkingCurve.Through(10, Depth(10), 40, Depth(40));
        Assert.Equal(0.144269504089, back.PenetrationDepth, 2e-6);
        Assert.Equal(7.07106781187, back.CriticalDose, 1e-4);
    }

    [Fact]
    public void LaterLayersAddTheirShare()
    {
        var light = new LayerLight(new WorkingCurve(0.15, 8), 1, 1, Layer, 3, 100);
        LightDose dose = Expose(Shapes.Box(-1, -1, 0, 1, 1, 6), 0.05, new GaussianBlur(Sigma), light, false);
        // CHECKS.md 4.3, COMPUTED: 1 / (1 - exp(-h / Dp)).
        Assert.Equal(3.52772647316, dose.At(new(0, 0, 10 * Layer)), 1e-6);
        Assert.Equal(
            3.52772647316 + 99 * (1 + Math.Exp(-Layer / 0.15) + Math.Exp(-2 * Layer / 0.15)),
            dose.At(new(0, 0, Layer)),
            1e-5
        );
    }

    [Fact]
    public void HeavyTailsComeNearTheirClosedForm()
    {
        var blur = new LorentzBlur(Sigma);
        Assert.Equal(1, blur.Components.Sum(c => c.Weight), 1e-12);
        for (double x = 0.001; x < 2; x *= 1.3)
        {
            double edge = blur.Components.Sum(c => c.Weight * new GaussianBlur(c.Sigma).EdgeShare(x)),
                disc = blur.Components.Sum(c => c.Weight * new GaussianBlur(c.Sigma).WithinRadius(x));
            Assert.Equal(blur.EdgeShare(x), edge, 0.005);
            Assert.Equal(blur.WithinRadius(x), disc, 0.02);
            if (x < 0.1)
                Assert.Equal(blur.EdgeShare(x), edge, 0.002);
        }
        // CHECKS.md 4.5, COMPUTED: E0/Ec = 4 gives x / gamma = 1.
        LightDose dose = OneLayer(Shapes.Box(-4, -4, 0, 4, 4, Layer), 0.04, blur, 4);
        Assert.Equal(Sigma, dose.Edge(new(4, 0, Layer), Right, 0.5, 0.5)!.Value, 2e-4);
    }

    [Property(MaxTest = 25)]
    public Property ThePixelsOfALayerHaveTheDoseOfTheirMiddles() =>
        Prop.ForAll(
            Cases(),
            c =>
            {
                double critical = c.Dose.Light.Curve.CriticalDose;
                foreach (DoseLayer layer in c.Dose.Layers().Where(l => l.Index % 3 == c.Seed % 3))
                {
                    LayerMask solid = layer.Solid(critical);
                    for (int i = c.Seed % 7; i < layer.Values.Length; i += 7)
                    {
                        (int y, int x) = Math.DivRem(i, layer.Grid.Width);
                        Vector2D middle = layer.Grid.Middle(x, y);
                        double there = c.Dose.At(new(middle.X, middle.Y, layer.Z));
                        if (Math.Abs(layer.Values[i] - there) > 1e-4 * c.Dose.Light.Dose)
                            return false;
                        if (Math.Abs(there - critical) > 1e-3 && solid[x, y] != there > critical)
                            return false;
                    }
                }
                return true;
            }
        );

    [Fact]
    public void LightForOtherLayersIsRefused()
    {
        MaskStack masks = MaskStack.Of(Shapes.Box(0, 0, 0, 1, 1, 1), new PixelGrid(default, 0.1, 0.1, 10, 10), 0.05);
        Assert.Contains(
            "0.1 mm",
            Assert
                .Throws<ArgumentException>(() =>
                    new LightDose(masks, new GaussianBlur(0.02), new LayerLight(new WorkingCurve(0.1, 8), 4, 2, 0.1))
                )
                .Message,
            StringComparison.Ordinal
        );
    }

    private static Arbitrary<(int Seed, LightDose Dose)> Cases() =>
        (
            from seed in Gen.Choose(0, 10000)
            from pitch in Gen.Choose(20, 60)
            from width in Gen.Choose(5, 60)
            from heavy in Gen.Elements(true, false)
            from grey in Gen.Elements(true, false)
            select (
                seed,
                Scene(
                    seed,
                    pitch / 1000.0,
                    heavy ? new LorentzBlur(width / 4000.0) : new GaussianBlur(width / 1000.0),
                    grey
                )
            )
        ).ToArbitrary();

    private static LightDose Scene(int seed, double pitch, EdgeBlur blur, bool grey)
    {
        var random = new Random(seed);
        double At() => Math.Round(random.NextDouble(), 3);
        TriangleMesh boxes = Shapes.Join([
            Shapes.Box(-0.1, -0.1, 0, 1.2, 1.1, 0.1),
            .. Enumerable
                .Range(0, 3)
                .Select(_ =>
                {
                    double x = At(),
                        y = At(),
                        z = At() / 3;
                    return Shapes.Box(x, y, z, x + 0.05 + At() / 3, y + 0.05 + At() / 3, z + 0.1 + At() / 3);
                }),
        ]);
        return Expose(boxes, pitch, blur, new LayerLight(new WorkingCurve(0.12, 8), 8, 2, Layer, 2, 10), grey);
    }

    private static LightDose OneLayer(
        TriangleMesh mesh,
        double pitch,
        EdgeBlur blur,
        double ratio,
        bool grey = false
    ) => Expose(mesh, pitch, blur, new LayerLight(new WorkingCurve(0.15, 1), ratio, 1, Layer), grey);

    private static LightDose Expose(TriangleMesh mesh, double pitch, EdgeBlur blur, LayerLight light, bool grey) =>
        new(MaskStack.Of(mesh, PixelGrid.Covering(mesh.Bounds, pitch, pitch, 3), light.Layer, grey), blur, light);
}
