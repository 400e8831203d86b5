using CalibGeom.Planar;

namespace CalibGeom.Tests.Planar;

/// <summary>Points in even steps round the origin, by turns on two circles.</summary>
internal static class Zigzag
{
    internal static GridPoint[] Of(int count, double first, double second) =>
        [
            .. Enumerable
                .Range(0, count)
                .Select(i =>
                {
                    (double sin, double cos) = Math.SinCos(2 * Math.PI * i / count);
                    double r = i % 2 == 0 ? first : second;
                    return GridPoint.FromMillimetres(r * cos, r * sin);
                }),
        ];
}
