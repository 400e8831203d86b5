using CalibGeom.Meshes;

namespace CalibGeom.Inspection;

/// <summary>Finds where a layer sticks out beyond what the layer below carries, and whether both sides carry it.</summary>
internal sealed class OverhangCheck(PixelGrid grid, double carried)
{
    private readonly FreshPixels fresh = new(grid);
    private readonly DefectTrail overhangs = new(LayerDefectKind.Overhang);
    private readonly DefectTrail bridges = new(LayerDefectKind.Bridge);

    internal IEnumerable<LayerDefect> Defects => overhangs.All().Concat(bridges.All());

    internal void Check(int layer, double z, LayerMask current, LayerMask below)
    {
        LayerMask difference = current.Except(below);
        if (difference.PixelCount == 0) return;
        fresh.Load(difference, below);
        var pieces = new RunLabels(difference, diagonal: true);
        var overhang = new (double Size, int Pixel)[pieces.Count];
        var bridge = new (double Size, int Pixel)[pieces.Count];
        int pixel = 0;
        for (int y = 0, run = 0; y < grid.Height; y++)
            foreach (PixelRun r in difference.Row(y))
            {
                int piece = pieces[run++];
                for (int x = r.Start; x < r.End; x++, pixel++)
                {
                    double d = fresh.Distance(pixel);
                    if (d <= carried || double.IsInfinity(d) || !fresh.IsRidge(pixel)) continue;
                    if (fresh.Span(pixel, below) is { } span) bridge[piece] = Worse(bridge[piece], span, pixel);
                    else overhang[piece] = Worse(overhang[piece], d, pixel);
                }
            }
        Report(overhangs, overhang, layer, z);
        Report(bridges, bridge, layer, z);
    }

    private static (double, int) Worse((double Size, int Pixel) known, double size, int pixel) => size > known.Size ? (size, pixel) : known;

    private void Report(DefectTrail trail, (double Size, int Pixel)[] worst, int layer, double z)
    {
        foreach ((double size, int pixel) in worst)
        {
            if (size == 0) continue;
            Vector2D middle = grid.Middle(fresh.Pixel(pixel).X, fresh.Pixel(pixel).Y);
            trail.Add(layer, new Vector3D(middle.X, middle.Y, z), size);
        }
    }
}
