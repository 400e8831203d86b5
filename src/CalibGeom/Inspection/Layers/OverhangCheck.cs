using CalibGeom.Meshes;
using CalibGeom.Slicing;

namespace CalibGeom.Inspection.Layers;

/// <summary>
/// Finds where layers stick out beyond what carries them, at once or by flat steps over many layers, and where both
/// sides carry them.
/// </summary>
internal sealed class OverhangCheck(PixelGrid grid, LayerSettings settings)
{
    private readonly FreshPixels fresh = new(grid);
    private readonly FlatReach flat = new(grid, settings.LayerHeight);
    private readonly DefectTrail overhangs = new();
    private readonly DefectTrail bridges = new();
    private readonly double carried = settings.CarriedOverhang;

    // What rounding to pixels may add to a reach.
    private readonly double rounding = Math.Max(grid.PitchX, grid.PitchY);

    internal IEnumerable<LayerDefect> Defects => overhangs.All().Concat(bridges.All());

    internal void Check(int layer, double z, LayerMask current, LayerMask below)
    {
        flat.Begin(layer);
        LayerMask difference = Relevant(current.Except(below), below);
        if (difference.PixelCount == 0)
            return;
        fresh.Load(difference, below);
        int[] pieceOf = Pieces(difference, out int count);
        // Half way across, the next carrier is half a span away, in whatever direction; a line of pixels may cross on
        // the slant.
        foreach (
            (double size, int pixel) in Worst(
                pieceOf,
                count,
                i =>
                    fresh.Distance(i) > carried && !double.IsInfinity(fresh.Span(i))
                        ? Math.Min(fresh.Span(i), 2 * fresh.Distance(i))
                        : 0
            )
        )
            if (size > 0)
                bridges.Add(Defect(LayerDefectKind.Bridge, pixel, layer, z, size));
        Close(layer, z);
        fresh.RestOnSpans();
        (double Reach, double Rise)[] reaches = Reaches();
        // Only what sticks out holds a piece together, so that two of them do not hide behind a steep wall they share.
        pieceOf = fresh.Pieces(i => reaches[i].Reach > 0, out count);
        foreach ((double size, int pixel) in Worst(pieceOf, count, i => reaches[i].Reach))
            if (size > 0)
                overhangs.Add(
                    Defect(LayerDefectKind.Overhang, pixel, layer, z, size) with
                    {
                        Angle = OverhangLimits.Angle(size, reaches[pixel].Rise),
                    }
                );
    }

    /// <summary>
    /// An inclined ceiling grows from one side until it meets the other: a short one was a bridge all along, and what
    /// goes on from it is carried.
    /// </summary>
    private void Close(int layer, double z)
    {
        int[] closing =
        [
            .. Enumerable
                .Range(0, fresh.Count)
                .Where(i => !double.IsInfinity(fresh.Span(i)) && flat.Continues(fresh.Carrier(i))),
        ];
        foreach (int i in closing)
        {
            LayerDefect end = Defect(LayerDefectKind.Bridge, i, layer, z, fresh.Span(i));
            foreach (LayerDefect begun in overhangs.Take(end.Place, layer))
                if (begun.Size + end.Size > settings.CarriedBridge)
                    overhangs.Add(begun);
                else
                    bridges.Add(end with { Layer = begun.Layer, Size = begun.Size + end.Size });
        }
        double[] whole = Array.ConvertAll(closing, i => flat.ReachOf(fresh.Carrier(i)) + fresh.Span(i));
        for (int k = 0; k < closing.Length; k++)
            if (whole[k] <= settings.CarriedBridge)
                flat.Rest(fresh.Carrier(closing[k]), whole[k]);
    }

    /// <summary>
    /// For each pixel how far it sticks out on a flat underside, mm; 0 where that is nothing to tell.
    /// </summary>
    private (double Reach, double Rise)[] Reaches()
    {
        double levelPerRise = flat.LeastStep / settings.LayerHeight;
        var reaches = new (double Reach, double Rise)[fresh.Count];
        for (int i = 0; i < reaches.Length; i++)
        {
            if (double.IsInfinity(fresh.Distance(i)) || fresh.Distance(i) == 0)
                continue;
            (double reach, double rise) = flat.Add(fresh.Pixel(i), fresh.Carrier(i));
            if (reach > carried && reach - rounding > rise * levelPerRise)
                reaches[i] = (reach, rise);
        }
        return reaches;
    }

    /// <summary>
    /// The connected pieces of the difference that reach further than a steep wall moves in a layer, or that go on from
    /// a flat underside.
    /// </summary>
    private LayerMask Relevant(LayerMask difference, LayerMask below)
    {
        if (difference.PixelCount == 0)
            return difference;
        double step = Math.Min(flat.LeastStep, carried);
        bool goingOn = !flat.IsEmpty;
        if (!goingOn && !difference.AnyBeyond(below, step))
            return LayerMask.Empty(grid);
        var pieces = new RunLabels(difference, diagonal: true);
        var kept = new bool[pieces.Count];
        for (int y = 0, run = 0; y < grid.Height; y++)
            foreach (PixelRun r in difference.Row(y))
            {
                int piece = pieces[run++];
                kept[piece] = kept[piece] || LayerMask.IsBeyond(below, y, r, step) || (goingOn && TouchesFlat(y, r));
            }
        return difference.Where(run => kept[pieces[run]]);
    }

    private bool TouchesFlat(int y, PixelRun run)
    {
        for (int row = y - 1; row <= y + 1; row++)
        for (int x = run.Start - 1; x <= run.End; x++)
            if (flat.Continues((x, row)))
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
            if (pieceOf[i] < 0)
                continue;
            (double known, int pixel) = worst[pieceOf[i]];
            double s = size(i);
            if (s > known || (s > 0 && s == known && fresh.Distance(i) > fresh.Distance(pixel)))
                worst[pieceOf[i]] = (s, i);
        }
        return worst;
    }

    private LayerDefect Defect(LayerDefectKind kind, int pixel, int layer, double z, double size)
    {
        Vector2D middle = grid.Middle(fresh.Pixel(pixel).X, fresh.Pixel(pixel).Y);
        return new LayerDefect(kind, new Vector3D(middle.X, middle.Y, z), layer, layer, size);
    }
}
