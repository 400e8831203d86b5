using CalibGeom.Meshes;
using CalibGeom.Slicing;

namespace CalibGeom.Inspection.Layers;

/// <summary>
/// Finds where a layer sticks out beyond what the layer below carries, and whether both sides carry it.
/// </summary>
internal sealed class OverhangCheck(PixelGrid grid, double carried)
{
    private readonly FreshPixels fresh = new(grid);
    private readonly DefectTrail overhangs = new(LayerDefectKind.Overhang);
    private readonly DefectTrail bridges = new(LayerDefectKind.Bridge);

    internal IEnumerable<LayerDefect> Defects => overhangs.All().Concat(bridges.All());

    internal void Check(int layer, double z, LayerMask current, LayerMask below)
    {
        LayerMask difference = current.Except(below);
        if (difference.PixelCount == 0)
            return;
        fresh.Load(difference, below);
        if (!Beyond())
            return;
        int[] pieceOf = Pieces(difference, out int count);
        // Half way across, the next carrier is half a span away, in whatever direction; a line of pixels may cross on
        // the slant.
        Report(
            bridges,
            Worst(
                pieceOf,
                count,
                i =>
                    fresh.Distance(i) > carried && !double.IsInfinity(fresh.Span(i))
                        ? Math.Min(fresh.Span(i), 2 * fresh.Distance(i))
                        : 0
            ),
            layer,
            z
        );
        fresh.RestOnSpans();
        Report(
            overhangs,
            Worst(
                pieceOf,
                count,
                i => fresh.Distance(i) > carried && !double.IsInfinity(fresh.Distance(i)) ? fresh.Distance(i) : 0
            ),
            layer,
            z
        );
    }

    private bool Beyond()
    {
        for (int i = 0; i < fresh.Count; i++)
            if (fresh.Distance(i) > carried && !double.IsInfinity(fresh.Distance(i)))
                return true;
        return false;
    }

    private int[] Pieces(LayerMask difference, out int count)
    {
        var pieces = new RunLabels(difference, diagonal: true);
        var ofPixel = new int[fresh.Count];
        int pixel = 0;
        for (int y = 0, run = 0; y < grid.Height; y++)
            foreach (PixelRun r in difference.Row(y))
            {
                Array.Fill(ofPixel, pieces[run++], pixel, r.Length);
                pixel += r.Length;
            }
        count = pieces.Count;
        return ofPixel;
    }

    /// <summary>
    /// The pixel with the largest size in each piece; among equals the one furthest from what carries it.
    /// </summary>
    private (double Size, int Pixel)[] Worst(int[] pieceOf, int count, Func<int, double> size)
    {
        var worst = new (double Size, int Pixel)[count];
        for (int i = 0; i < pieceOf.Length; i++)
        {
            (double known, int pixel) = worst[pieceOf[i]];
            double s = size(i);
            if (s > known || (s > 0 && s == known && fresh.Distance(i) > fresh.Distance(pixel)))
                worst[pieceOf[i]] = (s, i);
        }
        return worst;
    }

    private void Report(DefectTrail trail, (double Size, int Pixel)[] worst, int layer, double z)
    {
        foreach ((double size, int pixel) in worst)
        {
            if (size == 0)
                continue;
            Vector2D middle = grid.Middle(fresh.Pixel(pixel).X, fresh.Pixel(pixel).Y);
            trail.Add(layer, new Vector3D(middle.X, middle.Y, z), size);
        }
    }
}
