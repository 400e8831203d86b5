using CalibGeom.Light;
using CalibGeom.Meshes;
using CalibGeom.Pictures.Drawings;
using CalibGeom.TestObjects;

namespace CalibGeom.Pictures.Light;

/// <summary>
/// What light makes of a test object, close up: the corner of a pocket in one layer, and the tunnels of the slot comb
/// from the side; lit pixels, the border of solid resin, and the design.
/// </summary>
public static class DosePicture
{
    private const double CornerSize = 0.6,
        Margin = 0.15;
    private static readonly Vector3D X = new(1, 0, 0),
        Y = new(0, 1, 0),
        Z = new(0, 0, 1);

    /// <summary>Draws it.</summary>
    /// <param name="print">The print.</param>
    /// <exception cref="InputException">The object has neither boxes nor a slot comb.</exception>
    public static Drawing Draw(RasterPrint print)
    {
        ArgumentNullException.ThrowIfNull(print);
        DosePanel[] panels = [.. new[] { Corner(print), Comb(print) }.OfType<DosePanel>()];
        if (panels.Length == 0)
            throw new InputException(
                InputIds.Question,
                "The object has neither boxes nor a slot comb, so there is nothing to draw."
            );
        var drawing = new Drawing(8 + 560 * panels.Length, 520, "Light dose");
        TriangleMesh mesh = print.Made.ToMesh();
        for (int i = 0; i < panels.Length; i++)
            panels[i].Draw(drawing, 4 + 560 * i, 4, 556, 512, print.Dose, mesh);
        return drawing;
    }

    private static DosePanel? Corner(RasterPrint print)
    {
        if (print.Made.Boxes is not [BoxPlan box, ..])
            return null;
        MaskStack masks = print.Dose.Masks;
        int layer = (int)(((box.BandBottom + box.BandTop) / 2 - masks.BaseZ) / masks.LayerHeight);
        var corner = new Vector3D(box.X - box.Inside.X / 2, box.Y + box.Inside.Y / 2, masks.FilmZ(layer));
        return new DosePanel(corner - (X + Y) * (CornerSize / 2), X, Y, CornerSize, CornerSize)
        {
            Title = $"Pocket of box {box.Number}, film side of layer {layer}",
            Horizontal = "x, mm",
            Vertical = "y, mm",
        };
    }

    private static DosePanel? Comb(RasterPrint print)
    {
        GaugeLine[] tunnels = [.. print.Made.Gauges.Where(g => g.Feature.Part == KnownFeatures.Slot)];
        if (tunnels.Length == 0)
            return null;
        Vector3D first = tunnels[0].From.Point,
            last = tunnels[^1].From.Point;
        Vector3D along = Math.Abs(last.X - first.X) > Math.Abs(last.Y - first.Y) ? X : Y;
        double height = tunnels.Max(t => t.Length()) + 2 * Margin,
            length = (last - first).Length;
        return new DosePanel(first - along * 1.5 - Z * Margin, along, Z, length + 3, height)
        {
            Title = "Tunnels of the slot comb, from the side",
            Horizontal = along == X ? "x, mm" : "y, mm",
            Vertical = "height above the plate, mm",
        };
    }
}
