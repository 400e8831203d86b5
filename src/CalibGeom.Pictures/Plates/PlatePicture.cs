using CalibGeom.Meshes;
using CalibGeom.Pictures.Drawings;
using CalibGeom.Pictures.Plots;
using CalibGeom.Planar;
using CalibGeom.Plates;

namespace CalibGeom.Pictures.Plates;

/// <summary>A plate from above: the shadows of the parts, the gap round them and the coupons.</summary>
public static class PlatePicture
{
    private const double LongerSide = 780;

    /// <summary>Draws a plate.</summary>
    /// <param name="layout">Parts and coupons.</param>
    /// <param name="title">The heading.</param>
    /// <exception cref="InputException">A part cannot be read.</exception>
    public static Drawing Draw(PlateLayout layout, string title)
    {
        ArgumentNullException.ThrowIfNull(layout);
        ArgumentNullException.ThrowIfNull(title);
        Plate plate = layout.Plate;
        double scale = LongerSide / Math.Max(plate.Width, plate.Depth);
        double width = Math.Max(460, plate.Width * scale + PlotArea.LabelWidth),
            height = plate.Depth * scale + PlotArea.LabelHeight;
        var drawing = new Drawing(width, Math.Max(140, height), title);
        var plot = new PlotArea(
            drawing,
            0,
            0,
            plate.Width * scale + PlotArea.LabelWidth,
            Math.Max(140, height),
            new Axis("X, mm", plate.MinX, plate.MaxX),
            new Axis("Y, mm", plate.MinY, plate.MaxY)
        )
        {
            Title = title,
        };
        ShadowMap parts = layout.ToShadowMap();
        DrawParts(plot, layout, parts);
        if (plate.Margin > 0)
            plot.Area([Frame(plate)], null, new Pen(Ink.Muted, 1, 3), "margin");
        string? name = layout.Coupons.Count > 1 ? "coupons" : "coupon";
        foreach (PlacedCoupon coupon in layout.Coupons)
        {
            DrawCoupon(plot, coupon, plate, parts, name);
            name = null;
        }
        plot.Finish();
        return drawing;
    }

    private static void DrawParts(PlotArea plot, PlateLayout layout, ShadowMap map)
    {
        string shadow = layout.Rules.Under ? "parts at the coupon's height" : "parts";
        plot.Area(
            ShadowOutlines.Trace(map, layout.Rules.Gap),
            Ink.Stone.WithOpacity(0.3),
            null,
            FormattableString.Invariant($"gap {layout.Rules.Gap:0.##} mm")
        );
        plot.Area(ShadowOutlines.Trace(map, map.Cell / 2), Ink.Stone, new Pen(Ink.Muted), shadow);
    }

    /// <summary>
    /// The shadow filled, sections at three heights drawn into it, so that boxes and columns can be told.
    /// </summary>
    private static void DrawCoupon(PlotArea plot, PlacedCoupon coupon, Plate plate, ShadowMap parts, string? name)
    {
        TriangleMesh mesh = coupon.ToMesh();
        plot.Area(
            ShadowOutlines.Trace(ShadowMap.Of(plate, mesh), 0),
            Ink.Blue.WithOpacity(0.18),
            new Pen(Ink.Blue, 1.4),
            name
        );
        Box3D box = coupon.Bounds;
        foreach (double share in (double[])[0.35, 0.6, 0.9])
        foreach (SectionContour contour in mesh.CrossSection(box.Min.Z + share * box.Size.Z).Contours)
            plot.Area([contour.PlanePoints.ToArray()], null, new Pen(Ink.Blue, 0.7));
        string label = coupon.Label.Length > 0 ? coupon.Label : coupon.Coupon.Name;
        double below = box.Min.Y - plate.Depth / 26,
            above = box.Max.Y + plate.Depth / 90;
        bool fitsBelow = below > plate.MinY && Free(parts, box, below) >= Math.Min(2, Free(parts, box, above));
        double y = fitsBelow || above + plate.Depth / 26 > plate.MaxY ? below : above;
        plot.Note(
            (box.Min.X + box.Max.X) / 2,
            y,
            coupon.Turn == 0 ? label : $"{label} 90\u00b0",
            new TextStyle(12, TextAnchor.Middle, true) { Ink = Ink.Blue }
        );
    }

    /// <summary>How far from the parts a label would stand.</summary>
    private static double Free(ShadowMap parts, Box3D box, double y)
    {
        int column = (int)(((box.Min.X + box.Max.X) / 2 - parts.MinX) / parts.Cell),
            row = (int)((y - parts.MinY) / parts.Cell);
        return parts.Distance(Math.Clamp(column, 0, parts.Columns - 1), Math.Clamp(row, 0, parts.Rows - 1));
    }

    private static Vector2D[] Frame(Plate plate)
    {
        double m = plate.Margin;
        return
        [
            (plate.MinX + m, plate.MinY + m),
            (plate.MaxX - m, plate.MinY + m),
            (plate.MaxX - m, plate.MaxY - m),
            (plate.MinX + m, plate.MaxY - m),
        ];
    }
}
