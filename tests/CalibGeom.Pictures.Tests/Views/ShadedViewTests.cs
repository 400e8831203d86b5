using CalibGeom.Meshes;
using CalibGeom.Pictures.Objects;
using CalibGeom.Pictures.Views;
using CalibGeom.Planar;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Pictures.Tests.Views;

public class ShadedViewTests
{
    /// <summary>Two level squares, the smaller one 1 mm above the larger.</summary>
    private static TriangleMesh Steps { get; } =
        new(
            [-2, -2, 0, 2, -2, 0, 2, 2, 0, -2, 2, 0, -1, -1, 1, 1, -1, 1, 1, 1, 1, -1, 1, 1],
            [0, 1, 2, 0, 2, 3, 4, 5, 6, 4, 6, 7]
        );

    [Fact]
    public void TheNearestTriangleIsSeen()
    {
        DepthMap map = DepthMap.Of(Steps, ViewDirection.Top, 10, 0);
        Assert.Equal((40, 40), (map.Width, map.Height));
        for (int row = 0; row < 40; row++)
        for (int column = 0; column < 40; column++)
        {
            bool inner = row is >= 10 and < 30 && column is >= 10 and < 30;
            Assert.Equal(inner, map.TriangleAt(column, row) >= 2);
            Assert.Equal(inner ? 1 : 0, map.NearnessAt(column, row), 9);
        }
    }

    [Fact]
    public void HiddenEdgesAreNotDrawn()
    {
        // From below the smaller square is hidden by the larger; from above both are seen.
        Assert.Equal(24, Length(LineView.Of(Steps, ViewDirection.Top)), 3);
        Assert.Equal(16, Length(LineView.Of(Steps, new ViewDirection(-90, -90))), 3);
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(-62, 38)]
    [InlineData(200, -20)]
    public void TheAxesOfAViewAreSquare(double azimuth, double elevation)
    {
        var view = new ViewDirection(azimuth, elevation);
        Vector3D toward = Vector3D.Cross(view.Right, view.Up);
        Assert.Equal(0, (toward - view.Toward).Length, 12);
        Assert.Equal(1, view.Right.Length, 12);
        Assert.Equal(0, Vector3D.Dot(view.Right, view.Up), 12);
    }

    [Theory]
    [InlineData(361, 0)]
    [InlineData(0, 91)]
    [InlineData(double.NaN, 0)]
    public void AViewBeyondItsRangeIsRefused(double azimuth, double elevation) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new ViewDirection(azimuth, elevation));

    [Fact]
    public void PartsAreNamedByTheirGaugeLines()
    {
        TestObject made = TestObject.Of(new TestObjectSpec());
        ObjectParts parts = ObjectParts.Of(made);
        string[] names = [.. Enumerable.Range(0, parts.Mesh.TriangleCount).Select(parts.NameOf).Distinct()];
        string[] expected =
        [
            "plinth",
            "slots",
            "span.x",
            "span.y",
            "squeeze",
            .. made.Boxes.Select(b => $"box{b.Number}"),
            .. made.Columns.Select(c => $"column{c.Number}"),
        ];
        Assert.Equal(expected.Order(StringComparer.Ordinal), names.Order(StringComparer.Ordinal));
        foreach (BoxPlan box in made.Boxes)
            Assert.All(
                Enumerable.Range(0, parts.Mesh.TriangleCount).Where(t => parts.NameOf(t) == $"box{box.Number}"),
                t =>
                    Assert.InRange(
                        parts.Mesh.Triangle(t).A.X,
                        box.X - box.Outside.X / 2 - 0.01,
                        box.X + box.Outside.X / 2 + 0.01
                    )
            );
    }

    [Fact]
    public void AShadedViewIsTransparentRoundTheObjectAndTheSameEachTime()
    {
        byte[] one = ShadedView.ToPng(Steps, null, 64, 48),
            two = ShadedView.ToPng(Steps, null, 64, 48);
        Assert.Equal(one, two);
        using SkiaSharp.SKBitmap picture = SkiaSharp.SKBitmap.Decode(one);
        Assert.Equal((64, 48), (picture.Width, picture.Height));
        Assert.Equal(0, picture.GetPixel(0, 0).Alpha);
        Assert.Equal(255, picture.GetPixel(32, 24).Alpha);
    }

    private static double Length(IReadOnlyList<Vector2D[]> lines) =>
        lines.Sum(l =>
            l.Skip(1)
                .Zip(l)
                .Sum(p => Math.Sqrt(Math.Pow(p.First.X - p.Second.X, 2) + Math.Pow(p.First.Y - p.Second.Y, 2)))
        );
}
