using CalibGeom.Inspection.Layers;
using CalibGeom.Meshes;

namespace CalibGeom.Tests.Inspection;

/// <summary>Half a hollow ball at an angle: what it traps follows from the cap of a sphere.</summary>
public class TiltedBowlTests
{
    private const double Inner = 8,
        Outer = 10;

    private static readonly LayerSettings Usual = new()
    {
        LayerHeight = 0.1,
        PixelX = 0.1,
        PixelY = 0.1,
    };

    /// <summary>
    /// The film closes the bowl until a layer passes the lowest place of its rim, which lies R sin(angle) below the
    /// middle of the ball; trapped until then is the cap below, h = R - R sin(angle), of pi h^2 (3 R - h) / 3.
    /// </summary>
    [Theory]
    [InlineData(0)]
    [InlineData(10)]
    [InlineData(25)]
    [InlineData(40)]
    [InlineData(60)]
    [InlineData(75)]
    public void ABowlThatFacesTheFilmTrapsTheCapBelowItsRim(double degrees)
    {
        double rim = Inner * Math.Sin(degrees * Math.PI / 180),
            height = Inner - rim,
            volume = Math.PI * height * height * (3 * Inner - height) / 3,
            // A layer more or less at the rim, and a chord beside its arc.
            step = Usual.LayerHeight * Math.PI * (Inner * Inner - rim * rim);
        double trapped = LayerInspection
            .Run(Bowl(Affine3D.TurnX(degrees)), Usual)
            .Defects.Where(d => d.Kind == LayerDefectKind.SuctionCup)
            .Sum(d => d.Size);
        Assert.Equal(volume, trapped, 1.5 * step + 0.01 * volume);
    }

    /// <summary>Facing the plate it is closed by it while level; tilted, it drains under its rim.</summary>
    [Theory]
    [InlineData(180, true)]
    [InlineData(170, false)]
    [InlineData(150, false)]
    public void ABowlThatFacesThePlateDrainsWhereItIsTilted(double degrees, bool traps)
    {
        LayerReport report = LayerInspection.Run(Bowl(Affine3D.TurnX(degrees)), Usual);
        Assert.Equal(traps, report.Defects.Any(d => d.Kind == LayerDefectKind.SuctionCup));
    }

    private static TriangleMesh Bowl(Affine3D turn)
    {
        const int steps = 24;
        (double, double) At(double radius, double angle) =>
            (angle == -90 ? 0 : radius * Math.Cos(angle * Math.PI / 180), radius * Math.Sin(angle * Math.PI / 180));
        (double, double)[] Arc(double radius, double from, double to) =>
            [.. Enumerable.Range(0, steps + 1).Select(i => At(radius, from + (to - from) * i / steps))];
        TriangleMesh bowl = Shapes.Revolve(96, [.. Arc(Outer, -90, 0), .. Arc(Inner, 0, -90)]).Transform(turn);
        return bowl.Transform(Affine3D.Shift(new Vector3D(0, 0, -bowl.Bounds.Min.Z)));
    }
}
