using CalibGeom.Inspection.Layers;
using CalibGeom.Planar;
using CalibGeom.Slicing;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace CalibGeom.Tests.Inspection;

public class SmallContoursTests
{
    /// <summary>Against trying every edge with every corner.</summary>
    [Property(MaxTest = 200)]
    public Property TheLeastWidthIsThatOfTheNarrowestPairOfLines() =>
        Prop.ForAll(
            Gen.Choose(0, int.MaxValue).ToArbitrary(),
            seed =>
            {
                var random = new Random(seed);
                Vector2D[] ring = Shapes.Star(random, random.Next(3, 40), 0, 0, 0.1, 0.2);
                double expected = double.MaxValue;
                for (int i = 0; i < ring.Length; i++)
                for (int j = 0; j < i; j++)
                {
                    Vector2D along = ring[i] - ring[j];
                    double length = Math.Sqrt(along.X * along.X + along.Y * along.Y);
                    double[] beside = [.. ring.Select(p => Vector2D.Cross(along, p - ring[j]) / length)];
                    expected = Math.Min(expected, beside.Max() - beside.Min());
                }
                ThinSample found = default;
                SmallContours.Measure(new LayerContours(0, 0, ring, [ring.Length], 0), 0.5, s => found = s);
                Assert.Equal(expected, found.Width, 1e-12);
            }
        );
}
