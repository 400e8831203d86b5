using System.Globalization;
using System.Text.Json.Nodes;
using CalibGeom.Cli.Shared;
using CalibGeom.Meshes;
using CalibGeom.Objects;
using CalibGeom.Plates;

namespace CalibGeom.Cli.Place;

/// <summary>What <c>place</c> did, as text and as JSON.</summary>
internal static class PlaceReport
{
    internal static void Write(TextWriter writer, PlateLayout layout, CouponSet coupons, PlaceFiles files)
    {
        foreach (PlacedCoupon coupon in layout.Coupons)
        {
            Vector3D centre = (coupon.Bounds.Min + coupon.Bounds.Max) * 0.5;
            string turn = coupon.Turn == 0 ? "" : ", turned 90 degrees";
            writer.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{coupon.Name}{Exposure(coupons.ExposureOf(coupon.Label))}: middle at X {centre.X:0.000}, Y {centre.Y:0.000}, standing on Z "
                        + $"{coupon.Bounds.Min.Z:0.000} mm{turn}"
                )
            );
        }
        if (layout.Parts.Count > 0)
            writer.WriteLine(
                FormattableString.Invariant(
                    $"least distance to a part {Floor(files.Distance):0.0000} mm, gap {layout.Rules.Gap:0.0##} mm"
                )
            );
    }

    internal static JsonObject Describe(PlateLayout layout, CouponSet coupons, PlaceFiles files) =>
        new()
        {
            ["plate"] = new JsonObject
            {
                ["min"] = new JsonArray(layout.Plate.MinX, layout.Plate.MinY),
                ["max"] = new JsonArray(layout.Plate.MaxX, layout.Plate.MaxY),
                ["margin"] = layout.Plate.Margin,
            },
            ["parts"] = new JsonArray(
                layout
                    .Surveys.Select(s =>
                        (JsonNode)
                            new JsonObject
                            {
                                ["name"] = s.Name,
                                ["triangles"] = s.TriangleCount,
                                ["closed"] = s.IsClosed,
                                ["min"] = Point(s.Bounds.Min),
                                ["max"] = Point(s.Bounds.Max),
                            }
                    )
                    .ToArray()
            ),
            ["coupons"] = new JsonArray(
                layout.Coupons.Select(c => (JsonNode)Describe(c, coupons.ExposureOf(c.Label))).ToArray()
            ),
            ["gap"] = layout.Rules.Gap,
            ["distance"] = double.IsFinite(files.Distance) ? files.Distance : null,
            ["exactShadows"] = layout.IsExact,
            ["files"] = new JsonArray(files.Paths.Select(p => (JsonNode)p).ToArray()),
            ["caution"] = Caution.Text,
        };

    private static JsonObject Describe(PlacedCoupon c, double? exposure)
    {
        var coupon = new JsonObject
        {
            ["name"] = c.Coupon.Name,
            ["label"] = c.Label,
            ["turn"] = c.Turn,
            ["shift"] = Point(c.Shift),
            ["min"] = Point(c.Bounds.Min),
            ["max"] = Point(c.Bounds.Max),
        };
        if (exposure is { } s)
            coupon["exposure"] = s;
        return coupon;
    }

    private static string Exposure(double? time) => time is { } s ? FormattableString.Invariant($", {s:0.00} s") : "";

    /// <summary>Shown digits never say more than was measured.</summary>
    private static double Floor(double distance) => Math.Floor(distance * 1e4 + 1e-6) / 1e4;

    private static JsonArray Point(Vector3D p) => new(p.X, p.Y, p.Z);
}
