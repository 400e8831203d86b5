using CalibGeom.TestObjects.Layout;
using CalibGeom.TestObjects.Parts;
using FsCheck.Xunit;

namespace CalibGeom.Tests.TestObjects;

/// <summary>Where a line passes over what may be in the way of light.</summary>
public class ObstacleTests
{
    /// <summary>
    /// By slabs: over a rectangle a line is where it is between its left and right and between its front and back.
    /// Far from the origin too, and on lines along an axis.
    /// </summary>
    [Property(MaxTest = 2000)]
    public void ALineIsOverARectangleWhereItIsBetweenAllItsSides(
        sbyte left,
        sbyte front,
        byte wide,
        byte deep,
        sbyte fromX,
        sbyte fromY,
        sbyte alongX,
        sbyte alongY
    )
    {
        if (alongX == 0 && alongY == 0)
            return;
        var r = new Rect(left, front, left + 1 + wide % 40, front + 1 + deep % 40);
        // Halves and thirds, so that no line runs along a side or through a corner.
        (double X, double Y) first = (fromX + 0.5, fromY + 1 / 3.0);
        (double from, double to) = (double.NegativeInfinity, double.PositiveInfinity);
        foreach (
            (double start, double step, double low, double high) in new[]
            {
                (first.X, (double)alongX, r.X0, r.X1),
                (first.Y, alongY, r.Y0, r.Y1),
            }
        )
        {
            double a = (low - start) / step,
                b = (high - start) / step;
            (from, to) = (Math.Max(from, Math.Min(a, b)), Math.Min(to, Math.Max(a, b)));
        }
        var found = Obstacle.Of("wall", r, 3).Within(first, (first.X + alongX, first.Y + alongY));
        Assert.Equal(from < to, found is not null);
        if (found is not { } over)
            return;
        Assert.Equal(from, over.From, 1e-9 * (1 + Math.Abs(from)));
        Assert.Equal(to, over.To, 1e-9 * (1 + Math.Abs(to)));
    }
}
