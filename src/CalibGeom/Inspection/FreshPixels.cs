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
    private readonly List<double> span = [];
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

    internal void Load(LayerMask fresh, LayerMask below)
    {
        foreach ((int x, int y) in pixels) plane[y * grid.Width + x] = 0;
        pixels.Clear();
        carriers.Clear();
        distance.Clear();
        span.Clear();
        for (int y = 0; y < grid.Height; y++)
            foreach (PixelRun run in fresh.Row(y))
                for (int x = run.Start; x < run.End; x++)
                {
                    pixels.Add((x, y));
                    carriers.Add(default);
                    distance.Add(double.PositiveInfinity);
                    span.Add(double.PositiveInfinity);
                    plane[y * grid.Width + x] = pixels.Count;
                }
        for (int i = 0; i < pixels.Count; i++)
            foreach ((int dx, int dy) in Around)
                if (below[pixels[i].X + dx, pixels[i].Y + dy]) Offer(i, (pixels[i].X + dx, pixels[i].Y + dy));
        Spread();
        MeasureSpans(below);
    }

    /// <summary>The shortest straight line through a pixel, among four directions, that is carried at both ends, mm; infinite when none is.</summary>
    internal double Span(int i) => span[i];

    /// <summary>Counts what spans between two sides as carrying, so that <see cref="Distance"/> tells how far the rest sticks out.</summary>
    internal void RestOnSpans()
    {
        for (int i = 0; i < pixels.Count; i++)
            if (!double.IsInfinity(span[i])) Offer(i, pixels[i]);
        Spread();
    }

    private void MeasureSpans(LayerMask below)
    {
        for (int d = 0; d < 4; d++)
        {
            (int dx, int dy) = Around[d];
            double step = Math.Sqrt(Square(dx * grid.PitchX) + Square(dy * grid.PitchY));
            foreach ((int x, int y) in pixels)
            {
                if (Index(x - dx, y - dy) >= 0 || !below[x - dx, y - dy]) continue;
                int length = 1;
                while (Index(x + length * dx, y + length * dy) >= 0) length++;
                if (!below[x + length * dx, y + length * dy]) continue;
                for (int k = 0; k < length; k++)
                {
                    int i = Index(x + k * dx, y + k * dy);
                    span[i] = Math.Min(span[i], length * step);
                }
            }
        }
    }

    private void Spread()
    {
        while (queue.TryDequeue(out int i))
            foreach ((int dx, int dy) in Around)
                if (Index(pixels[i].X + dx, pixels[i].Y + dy) is var j and >= 0) Offer(j, carriers[i]);
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
