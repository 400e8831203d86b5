using CalibGeom.Slicing;

namespace CalibGeom.Inspection.Layers;

/// <summary>
/// The pixels of a layer that have nothing below them, each with the way to the nearest pixel that carries the layer,
/// measured within these pixels. Takes memory for these pixels alone. Not safe to share between threads.
/// </summary>
internal sealed class FreshPixels(PixelGrid grid)
{
    private static readonly (int X, int Y)[] Around =
    [
        (1, 0),
        (1, 1),
        (0, 1),
        (-1, 1),
        (-1, 0),
        (-1, -1),
        (0, -1),
        (1, -1),
    ];

    // Lines of pixels at most 9.3 degrees from any direction: one pixel a step along x, or along y when steep, and so
    // many thirds of one aside.
    private static readonly (bool Steep, int Thirds)[] Lines =
    [
        .. Enumerable.Range(-3, 7).Select(t => (false, t)),
        .. Enumerable.Range(-2, 5).Select(t => (true, t)),
    ];

    private readonly List<(int X, int Y)> pixels = [];
    private readonly List<(int X, int Y)> carriers = [];
    private readonly List<double> distance = [];
    private readonly List<double> span = [];
    private readonly Queue<int> queue = new();
    private LayerMask fresh = LayerMask.Empty(grid);
    private int[] firstOfRun = [];

    internal int Count => pixels.Count;

    internal (int X, int Y) Pixel(int i) => pixels[i];

    /// <summary>The nearest carrier of a pixel; only where <see cref="Distance"/> is finite.</summary>
    internal (int X, int Y) Carrier(int i) => carriers[i];

    /// <summary>mm from the nearest carrier; infinite when none is connected.</summary>
    internal double Distance(int i) => distance[i];

    internal void Load(LayerMask pixelsWithoutBelow, LayerMask below)
    {
        fresh = pixelsWithoutBelow;
        firstOfRun = new int[fresh.RunCount];
        pixels.Clear();
        carriers.Clear();
        distance.Clear();
        span.Clear();
        for (int y = 0, number = 0; y < grid.Height; y++)
            foreach (PixelRun run in fresh.Row(y))
            {
                firstOfRun[number++] = pixels.Count;
                for (int x = run.Start; x < run.End; x++)
                {
                    pixels.Add((x, y));
                    carriers.Add(default);
                    distance.Add(double.PositiveInfinity);
                    span.Add(double.PositiveInfinity);
                }
            }
        for (int i = 0; i < pixels.Count; i++)
            foreach ((int dx, int dy) in Around)
                if (below[pixels[i].X + dx, pixels[i].Y + dy])
                    Offer(i, (pixels[i].X + dx, pixels[i].Y + dy));
        Spread();
        MeasureSpans(below);
    }

    /// <summary>
    /// The shortest straight line through a pixel, among twelve directions, that is carried at both ends, mm; infinite
    /// when none is.
    /// </summary>
    internal double Span(int i) => span[i];

    /// <summary>
    /// Counts what spans between two sides as carrying, so that <see cref="Distance"/> tells how far the rest sticks
    /// out.
    /// </summary>
    internal void RestOnSpans()
    {
        for (int i = 0; i < pixels.Count; i++)
            if (!double.IsInfinity(span[i]))
                Offer(i, pixels[i]);
        Spread();
    }

    /// <summary>
    /// The number of the connected piece that each pixel belongs to, -1 for those that are left out.
    /// </summary>
    internal int[] Pieces(Func<int, bool> belongs, out int count)
    {
        var pieceOf = new int[pixels.Count];
        Array.Fill(pieceOf, -1);
        count = 0;
        for (int first = 0; first < pieceOf.Length; first++)
        {
            if (pieceOf[first] >= 0 || !belongs(first))
                continue;
            pieceOf[first] = count;
            queue.Enqueue(first);
            while (queue.TryDequeue(out int i))
                foreach ((int dx, int dy) in Around)
                    if (
                        Index(pixels[i].X + dx, pixels[i].Y + dy) is var j and >= 0
                        && pieceOf[j] < 0
                        && belongs(j)
                    )
                    {
                        pieceOf[j] = count;
                        queue.Enqueue(j);
                    }
            count++;
        }
        return pieceOf;
    }

    private void MeasureSpans(LayerMask below)
    {
        foreach ((bool steep, int thirds) in Lines)
        {
            double slope = thirds / 3.0;
            double step = steep
                ? Math.Sqrt(Square(slope * grid.PitchX) + Square(grid.PitchY))
                : Math.Sqrt(Square(grid.PitchX) + Square(slope * grid.PitchY));
            (int X, int Y) On((int X, int Y) start, int k)
            {
                int aside = (int)Math.Floor(k * slope + 0.5);
                return steep ? (start.X + aside, start.Y + k) : (start.X + k, start.Y + aside);
            }
            foreach ((int X, int Y) start in pixels)
            {
                (int X, int Y) before = On(start, -1);
                if (!below[before.X, before.Y])
                    continue;
                int length = 1;
                while (On(start, length) is var p && fresh[p.X, p.Y])
                    length++;
                (int X, int Y) after = On(start, length);
                if (!below[after.X, after.Y])
                    continue;
                for (int k = 0; k < length; k++)
                {
                    int i = Index(On(start, k).X, On(start, k).Y);
                    span[i] = Math.Min(span[i], length * step);
                }
            }
        }
    }

    private void Spread()
    {
        while (queue.TryDequeue(out int i))
            foreach ((int dx, int dy) in Around)
                if (Index(pixels[i].X + dx, pixels[i].Y + dy) is var j and >= 0)
                    Offer(j, carriers[i]);
    }

    private void Offer(int i, (int X, int Y) carrier)
    {
        double d = Math.Sqrt(
            Square((pixels[i].X - carrier.X) * grid.PitchX) + Square((pixels[i].Y - carrier.Y) * grid.PitchY)
        );
        if (d >= distance[i])
            return;
        distance[i] = d;
        carriers[i] = carrier;
        queue.Enqueue(i);
    }

    private int Index(int x, int y)
    {
        int run = fresh.RunAt(x, y);
        return run < 0 ? -1 : firstOfRun[run] + x - fresh.Run(run).Start;
    }

    private static double Square(double v) => v * v;
}
