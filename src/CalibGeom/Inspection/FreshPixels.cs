namespace CalibGeom.Inspection;

/// <summary>
/// The pixels of a layer that have nothing below them, each with the way to the nearest pixel that carries the layer, measured within
/// these pixels. Not safe to share between threads.
/// </summary>
internal sealed class FreshPixels
{
    private static readonly (int X, int Y)[] Around = [(1, 0), (1, 1), (0, 1), (-1, 1), (-1, 0), (-1, -1), (0, -1), (1, -1)];
    private readonly PixelGrid grid;
    private readonly int[] plane;
    private readonly List<(int X, int Y)> pixels = [];
    private readonly List<(int X, int Y)> carriers = [];
    private readonly List<double> distance = [];
    private readonly Queue<int> queue = new();

    internal FreshPixels(PixelGrid grid)
    {
        this.grid = grid;
        plane = new int[grid.Width * grid.Height];
    }

    internal int Count => pixels.Count;

    internal (int X, int Y) Pixel(int i) => pixels[i];

    /// <summary>mm from the nearest carrier; infinite when none is connected.</summary>
    internal double Distance(int i) => distance[i];

    internal bool Contains(int x, int y) => Index(x, y) >= 0;

    internal void Load(LayerMask fresh, LayerMask below)
    {
        foreach ((int x, int y) in pixels) plane[y * grid.Width + x] = 0;
        pixels.Clear();
        carriers.Clear();
        distance.Clear();
        for (int y = 0; y < grid.Height; y++)
            foreach (PixelRun run in fresh.Row(y))
                for (int x = run.Start; x < run.End; x++)
                {
                    pixels.Add((x, y));
                    carriers.Add(default);
                    distance.Add(double.PositiveInfinity);
                    plane[y * grid.Width + x] = pixels.Count;
                }
        for (int i = 0; i < pixels.Count; i++)
            foreach ((int dx, int dy) in Around)
                if (below[pixels[i].X + dx, pixels[i].Y + dy]) Offer(i, (pixels[i].X + dx, pixels[i].Y + dy));
        while (queue.TryDequeue(out int i))
            foreach ((int dx, int dy) in Around)
                if (Index(pixels[i].X + dx, pixels[i].Y + dy) is var j and >= 0) Offer(j, carriers[i]);
    }

    /// <summary>Whether no pixel round about is further from what carries it.</summary>
    internal bool IsRidge(int i)
    {
        foreach ((int dx, int dy) in Around)
            if (Index(pixels[i].X + dx, pixels[i].Y + dy) is var j and >= 0 && distance[j] > distance[i]) return false;
        return true;
    }

    /// <summary>The shortest straight line through a pixel that is carried at both ends, mm; null when there is none among four directions.</summary>
    internal double? Span(int i, LayerMask below)
    {
        double? best = null;
        for (int d = 0; d < 4; d++)
        {
            (int dx, int dy) = Around[d];
            int steps = Walk(pixels[i], dx, dy, below) + Walk(pixels[i], -dx, -dy, below);
            // Two ends share the pixel itself; a missing end makes the sum negative.
            double length = (steps - 1) * Math.Sqrt(Square(dx * grid.PitchX) + Square(dy * grid.PitchY));
            if (steps > 0 && (best is null || length < best)) best = length;
        }
        return best;
    }

    private int Walk((int X, int Y) from, int dx, int dy, LayerMask below)
    {
        for (int steps = 1; ; steps++)
        {
            int x = from.X + steps * dx, y = from.Y + steps * dy;
            if (below[x, y]) return steps;
            if (!Contains(x, y)) return -grid.Width - grid.Height;
        }
    }

    private void Offer(int i, (int X, int Y) carrier)
    {
        double d = Math.Sqrt(Square((pixels[i].X - carrier.X) * grid.PitchX) + Square((pixels[i].Y - carrier.Y) * grid.PitchY));
        if (d >= distance[i]) return;
        distance[i] = d;
        carriers[i] = carrier;
        queue.Enqueue(i);
    }

    private int Index(int x, int y) => (uint)x < (uint)grid.Width && (uint)y < (uint)grid.Height ? plane[y * grid.Width + x] - 1 : -1;

    private static double Square(double v) => v * v;
}
