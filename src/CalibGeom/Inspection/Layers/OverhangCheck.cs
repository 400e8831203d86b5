using CalibGeom.Meshes;
using CalibGeom.Planar;
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
    private (double Reach, double Rise, bool IsFlat)[] reaches = [];

    // What rounding to pixels may add to a reach: half a pixel along each axis at both of its ends.
    private readonly double rounding = double.Hypot(grid.PitchX, grid.PitchY);

    internal IEnumerable<LayerDefect> Defects => overhangs.All().Concat(bridges.All());

    internal void Check(int layer, double z, LayerMask current, LayerMask below)
    {
        flat.Begin(layer);
        LayerMask difference = Relevant(current.Except(below), below);
        if (difference.PixelCount == 0)
            return;
        RequireSize(layer, difference.PixelCount);
        fresh.Load(difference, below);
        fresh.MeasureSpans(settings.CarriedBridge, keepLines: !flat.IsEmpty);
        // Half way across, the next carrier is half a span away, in whatever direction; a line of pixels may cross on
        // the slant.
        double Crossing(int i) =>
            fresh.Distance(i) > carried && !double.IsInfinity(fresh.Span(i))
                ? Math.Min(fresh.Span(i), 2 * fresh.Distance(i))
                : 0;
        foreach ((double size, int pixel) in Worst(Crossing, i => Crossing(i) > 0))
            bridges.Add(Defect(LayerDefectKind.Bridge, pixel, layer, z, size));
        Close(layer, z);
        fresh.RestOnSpans();
        Reach();
        foreach ((double size, int pixel) in Worst(i => reaches[i].Reach, i => reaches[i].IsFlat))
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
        var resting = new List<((int X, int Y) End, double Whole)>();
        foreach (CarriedLine line in fresh.CarriedLines)
        {
            bool closes = false;
            foreach (((int X, int Y) end, (int X, int Y) other) in Ends(line))
                if (flat.ReachTowards(end, other) is var reach and > 0)
                {
                    closes = true;
                    if (reach + line.Length <= settings.CarriedBridge)
                        resting.Add((end, reach + line.Length));
                }
            if (closes)
                CloseTrails(Defect(LayerDefectKind.Bridge, line.First, layer, z, line.Length));
        }
        foreach (((int X, int Y) end, double whole) in resting)
            flat.Rest(end, whole);
    }

    private static ReadOnlySpan<((int X, int Y) End, (int X, int Y) Other)> Ends(CarriedLine line) =>
        new[] { (line.From, line.To), (line.To, line.From) };

    private void CloseTrails(LayerDefect end)
    {
        foreach (LayerDefect begun in overhangs.Take(end.Place, end.Layer))
            if (begun.Size + end.Size > settings.CarriedBridge)
                overhangs.Add(begun);
            else
                bridges.Add(end with { Layer = begun.Layer, Size = begun.Size + end.Size });
    }

    /// <summary>
    /// For each pixel how far it sticks out on a flat underside, mm; 0 where that is nothing to tell.
    /// </summary>
    private void Reach()
    {
        if (reaches.Length < fresh.Count)
            reaches = new (double, double, bool)[Math.Max(fresh.Count, 2 * reaches.Length)];
        double levelPerRise = flat.LeastStep / settings.LayerHeight;
        for (int i = 0; i < fresh.Count; i++)
        {
            reaches[i] = default;
            if (double.IsInfinity(fresh.Distance(i)) || fresh.Distance(i) == 0)
                continue;
            ((int X, int Y, int Layer) origin, bool isFlat) = Begun(i);
            (double reach, double rise) = flat.Way(fresh.Pixel(i), origin);
            reaches[i] = (reach > carried && reach - rounding > rise * levelPerRise ? reach : 0, rise, isFlat);
        }
    }

    /// <summary>
    /// Notes where the underside in a pixel began. Of all that carry it beside it the one counts from which it sticks
    /// out least: the nearest alone would lead aside, layer for layer, on a front that is aslant to the pixels.
    /// </summary>
    private ((int X, int Y, int Layer) Origin, bool IsFlat) Begun(int i)
    {
        (int X, int Y) pixel = fresh.Pixel(i);
        ((int X, int Y, int Layer) origin, double excess) = flat.From(pixel, fresh.Carrier(i));
        for (int k = 0; excess > 0 && k < FreshPixels.Neighbours; k++)
            if (fresh.LitBelow(i, k) is { } carrier && flat.From(pixel, carrier) is var other && other.Excess < excess)
                (origin, excess) = other;
        if (excess > 0)
            flat.Add(pixel, origin);
        return (origin, excess > 0);
    }

    /// <summary>
    /// The connected pieces of the difference that something carries and that reach further than a steep wall moves in
    /// a layer, or that go on from a flat underside. What nothing carries is an island, however large, and no overhang.
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
        bool[] kept = new bool[pieces.Count],
            isCarried = new bool[pieces.Count];
        for (int y = 0, run = 0; y < grid.Height; y++)
            foreach (PixelRun r in difference.Row(y))
            {
                int piece = pieces[run++];
                kept[piece] = kept[piece] || LayerMask.IsBeyond(below, y, r, step);
                isCarried[piece] = isCarried[piece] || below.Touches(y, r);
            }
        for (int piece = 0; piece < kept.Length; piece++)
            kept[piece] &= isCarried[piece];
        if (goingOn && Array.Exists(kept, k => !k))
            KeepAround(difference, pieces, kept);
        return Array.TrueForAll(kept, k => k) ? difference : difference.Where(run => kept[pieces[run]]);
    }

    /// <summary>Keeps the pieces that touch a pixel of a flat underside.</summary>
    private void KeepAround(LayerMask difference, RunLabels pieces, bool[] kept)
    {
        for (int y = 0, run = 0; y < grid.Height; y++)
            foreach (PixelRun r in difference.Row(y))
            {
                int piece = pieces[run++];
                kept[piece] = kept[piece] || flat.Touches(y, r);
            }
    }

    /// <summary>
    /// The pixel with the largest size in each connected piece of those that belong, where there is one above 0; among
    /// equals the one furthest from what carries it. A steep wall does not belong, so that two places do not hide
    /// behind one that they share.
    /// </summary>
    private IEnumerable<(double Size, int Pixel)> Worst(Func<int, double> size, Func<int, bool> belongs)
    {
        int[] pieceOf = fresh.Pieces(belongs, out int count);
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
        return worst.Where(w => w.Size > 0);
    }

    /// <summary>Each pixel takes some 40 bytes: beyond this limit it would be gigabytes.</summary>
    private void RequireSize(int layer, long pixels)
    {
        if (pixels > LayerInspection.MostHanging)
            throw new InputException(
                InputIds.Mesh,
                FormattableString.Invariant(
                    $"Layer {layer} sticks out over {pixels} pixels of {grid.PitchX} x {grid.PitchY} mm at once; at most {LayerInspection.MostHanging} can be inspected. Inspect it with larger pixels."
                )
            );
    }

    private LayerDefect Defect(LayerDefectKind kind, int pixel, int layer, double z, double size)
    {
        Vector2D middle = grid.Middle(fresh.Pixel(pixel).X, fresh.Pixel(pixel).Y);
        return new LayerDefect(kind, new Vector3D(middle.X, middle.Y, z), layer, layer, size);
    }
}
