using System.Globalization;
using System.Text.Json.Nodes;
using CalibGeom.Cli.Shared;
using CalibGeom.Meshes;
using CalibGeom.Plates;

namespace CalibGeom.Cli.Place;

/// <summary>What <c>place</c> did, as text and as JSON.</summary>
internal static class PlaceReport
{
    internal static void Write(TextWriter writer, PlateLayout layout, PlaceFiles files)
    {
        foreach (PlacedCoupon coupon in layout.Coupons)
        {
            Vector3D centre = (coupon.Bounds.Min + coupon.Bounds.Max) * 0.5;
            string turn = coupon.Turn == 0 ? "" : ", turned 90 degrees";
            writer.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{coupon.Name}: middle at X {centre.X:0.000}, Y {centre.Y:0.000}, standing on Z "
                        + $"{coupon.Bounds.Min.Z:0.000} mm{turn}"
                )
            );
        }
        writer.WriteLine(
            FormattableString.Invariant(
                $"least distance to a part {Floor(files.Distance):0.0000} mm, gap {layout.Rules.Gap:0.0##} mm"
            )
        );
    }

    internal static JsonObject Describe(PlateLayout layout, PlaceFiles files) =>
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
                layout
                    .Coupons.Select(c =>
                        (JsonNode)
                            new JsonObject
                            {
                                ["name"] = c.Coupon.Name,
                                ["label"] = c.Label,
                                ["turn"] = c.Turn,
                                ["shift"] = Point(c.Shift),
                                ["min"] = Point(c.Bounds.Min),
                                ["max"] = Point(c.Bounds.Max),
                            }
                    )
                    .ToArray()
            ),
            ["gap"] = layout.Rules.Gap,
            ["distance"] = files.Distance,
            ["exactShadows"] = layout.IsExact,
            ["files"] = new JsonArray(files.Paths.Select(p => (JsonNode)p).ToArray()),
            ["caution"] = Caution.Text,
        };

    /// <summary>Shown digits never say more than was measured.</summary>
    private static double Floor(double distance) => Math.Floor(distance * 1e4 + 1e-6) / 1e4;

    private static JsonArray Point(Vector3D p) => new(p.X, p.Y, p.Z);
}
