using CalibGeom.Pictures.Views;
using CalibGeom.Planar;

namespace CalibGeom.Pictures.Objects;

/// <summary>How a view's plane, Y up, lies on the sheet, Y down.</summary>
/// <param name="Extent">What is shown, mm of the object.</param>
/// <param name="X">Where its left edge lies, mm of paper.</param>
/// <param name="Y">Where its top edge lies, mm of paper.</param>
/// <param name="Scale">mm of paper for a mm of the object.</param>
internal sealed record Frame(Box2D Extent, double X, double Y, double Scale)
{
    /// <summary>The scales of drawings (ISO 5455).</summary>
    internal static readonly double[] Scales = [10, 5, 2, 1, 0.5, 0.2, 0.1, 0.05, 0.02, 0.01];

    internal double Width => Extent.Width * Scale;

    internal double Height => Extent.Height * Scale;

    internal Room Room => new(X, Y, Width, Height);

    internal Vector2D Map(double x, double y) => (MapX(x), MapY(y));

    internal double MapX(double x) => X + (x - Extent.Left) * Scale;

    internal double MapY(double y) => Y + (Extent.Top - y) * Scale;

    /// <summary>The largest scale of drawings at which something fits.</summary>
    internal static double Fit(double width, double height, double roomWidth, double roomHeight) =>
        Scales.FirstOrDefault(s => width * s <= roomWidth && height * s <= roomHeight, Scales[^1]);

    internal static string Name(double scale) =>
        scale >= 1
            ? FormattableString.Invariant($"{scale:0.##}:1")
            : FormattableString.Invariant($"1:{1 / scale:0.##}");
}
