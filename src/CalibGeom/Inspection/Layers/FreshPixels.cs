using CalibGeom.Slicing;

namespace CalibGeom.Inspection.Layers;

/// <summary>
/// The pixels of a layer that have nothing below them, row by row, each with the way to the nearest pixel that carries
/// the layer, measured within these pixels. Takes memory for these pixels alone, and keeps it from layer to layer. Not
/// safe to share between threads.
/// </summary>
internal sealed partial class FreshPixels(PixelGrid grid)
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

    private readonly Queue<int> queue = new();
    private readonly int[] rowStarts = new int[grid.Height + 1];
    private (int X, int Y)[] pixels = [];
    private (int X, int Y)[] carriers = [];

    // Where the search for neighbours in the row behind and in front begins.
    private int[] behind = [];
    private int[] before = [];

    // Bit k: the neighbour Around[k] is lit in the layer below, or is one of these pixels.
    private byte[] lit = [];
    private byte[] near = [];
    private double[] distance = [];
    private double[] span = [];

    internal int Count { get; private set; }

    internal (int X, int Y) Pixel(int i) => pixels[i];

    /// <summary>The nearest carrier of a pixel; only where <see cref="Distance"/> is finite.</summary>
    internal (int X, int Y) Carrier(int i) => carriers[i];

    /// <summary>mm from the nearest carrier; infinite when none is connected.</summary>
    internal double Distance(int i) => distance[i];

    /// <summary>How many neighbours a pixel has.</summary>
    internal const int Neighbours = 8;

    /// <summary>A neighbour of a pixel that is lit in the layer below; null when that one is not.</summary>
    internal (int X, int Y)? LitBelow(int i, int neighbour) =>
        (lit[i] >> neighbour & 1) != 0 ? (pixels[i].X + Around[neighbour].X, pixels[i].Y + Around[neighbour].Y) : null;

    internal void Load(LayerMask fresh, LayerMask below)
    {
        Count = checked((int)fresh.PixelCount);
        if (pixels.Length < Count)
            Grow();
        Array.Fill(distance, double.PositiveInfinity, 0, Count);
        Array.Fill(span, double.PositiveInfinity, 0, Count);
        for (int y = 0, i = 0; y < grid.Height; y++)
        {
            foreach (PixelRun run in fresh.Row(y))
                for (int x = run.Start; x < run.End; x++)
                    pixels[i++] = (x, y);
            rowStarts[y + 1] = i;
        }
        LinkRows();
        Light(below);
        for (int i = 0; i < Count; i++)
        for (int k = 0; lit[i] >> k != 0; k++)
            if ((lit[i] >> k & 1) != 0)
                Offer(i, (pixels[i].X + Around[k].X, pixels[i].Y + Around[k].Y));
        Spread();
    }

    /// <summary>
    /// Counts what spans between two sides as carrying, so that <see cref="Distance"/> tells how far the rest sticks
    /// out.
    /// </summary>
    internal void RestOnSpans()
    {
        for (int i = 0; i < Count; i++)
            if (!double.IsInfinity(span[i]))
                Offer(i, pixels[i]);
        Spread();
    }

    /// <summary>
    /// The number of the connected piece that each pixel belongs to, -1 for those that are left out.
    /// </summary>
    internal int[] Pieces(Func<int, bool> belongs, out int count)
    {
        var pieceOf = new int[Count];
        Array.Fill(pieceOf, -1);
        count = 0;
        for (int first = 0; first < pieceOf.Length; first++)
        {
            if (pieceOf[first] >= 0 || !belongs(first))
                continue;
            pieceOf[first] = count;
            queue.Enqueue(first);
            while (queue.TryDequeue(out int i))
                for (int k = 0; near[i] >> k != 0; k++)
                    if (Neighbour(i, k) is var j and >= 0 && pieceOf[j] < 0 && belongs(j))
                    {
                        pieceOf[j] = count;
                        queue.Enqueue(j);
                    }
            count++;
        }
        return pieceOf;
    }

    private void Grow()
    {
        int room = Math.Max(Count, 2 * pixels.Length);
        (pixels, carriers) = (new (int, int)[room], new (int, int)[room]);
        (behind, before, lit, near) = (new int[room], new int[room], new byte[room], new byte[room]);
        (distance, span) = (new double[room], new double[room]);
    }

    private void LinkRows()
    {
        for (int y = 0; y < grid.Height; y++)
        {
            (int start, int end) = (rowStarts[y], rowStarts[y + 1]);
            if (start == end)
                continue;
            for (int i = start; i < end; i++)
            {
                bool left = i > start && pixels[i - 1].X == pixels[i].X - 1,
                    right = i + 1 < end && pixels[i + 1].X == pixels[i].X + 1;
                near[i] = (byte)((right ? 1 : 0) | (left ? 1 << 4 : 0));
            }
            Link(y, y + 1, behind, 3, 2, 1);
            Link(y, y - 1, before, 5, 6, 7);
        }
    }

    /// <summary>
    /// For each pixel of a row the first in another row that is at most one column to its left, and in three bits, from
    /// left to right, which ones are its neighbours.
    /// </summary>
    private void Link(int y, int other, int[] links, int left, int middle, int right)
    {
        (int at, int end) = (uint)other < (uint)grid.Height ? (rowStarts[other], rowStarts[other + 1]) : (0, 0);
        for (int i = rowStarts[y]; i < rowStarts[y + 1]; i++)
        {
            int x = pixels[i].X;
            while (at < end && pixels[at].X < x - 1)
                at++;
            links[i] = at;
            int found = 0;
            for (int j = at; j < end && pixels[j].X <= x + 1; j++)
                found |=
                    1
                    << (
                        pixels[j].X < x ? left
                        : pixels[j].X == x ? middle
                        : right
                    );
            near[i] |= (byte)found;
        }
    }

    /// <summary>The number of the neighbour in direction k; -1 when that is none of these pixels.</summary>
    private int Neighbour(int i, int k)
    {
        int bits = near[i];
        if ((bits >> k & 1) == 0)
            return -1;
        return k switch
        {
            0 => i + 1,
            4 => i - 1,
            3 => behind[i],
            2 => behind[i] + (bits >> 3 & 1),
            1 => behind[i] + (bits >> 3 & 1) + (bits >> 2 & 1),
            5 => before[i],
            6 => before[i] + (bits >> 5 & 1),
            _ => before[i] + (bits >> 5 & 1) + (bits >> 6 & 1),
        };
    }

    /// <summary>Notes which neighbours of each pixel are lit below.</summary>
    private void Light(LayerMask below)
    {
        Array.Clear(lit, 0, Count);
        for (int y = 0; y < grid.Height; y++)
        {
            if (rowStarts[y] == rowStarts[y + 1])
                continue;
            LightFrom(below, y, 1, [3, 2, 1]);
            LightFrom(below, y, 0, [4, -1, 0]);
            LightFrom(below, y, -1, [5, 6, 7]);
        }
    }

    private void LightFrom(LayerMask below, int y, int dy, ReadOnlySpan<int> bits)
    {
        if ((uint)(y + dy) >= (uint)grid.Height)
            return;
        ReadOnlySpan<PixelRun> row = below.Row(y + dy);
        int run = 0;
        for (int i = rowStarts[y]; i < rowStarts[y + 1] && run < row.Length; i++)
        {
            int x = pixels[i].X - 1;
            while (run < row.Length && row[run].End <= x)
                run++;
            for (int k = 0, r = run; k < 3; k++)
            {
                while (r < row.Length && row[r].End <= x + k)
                    r++;
                if (r < row.Length && row[r].Start <= x + k && bits[k] >= 0)
                    lit[i] |= (byte)(1 << bits[k]);
            }
        }
    }

    private void Spread()
    {
        while (queue.TryDequeue(out int i))
            for (int k = 0; near[i] >> k != 0; k++)
                if (Neighbour(i, k) is var j and >= 0)
                    Offer(j, carriers[i]);
    }

    private void Offer(int i, (int X, int Y) carrier)
    {
        double d = Level(pixels[i], carrier);
        if (d >= distance[i])
            return;
        distance[i] = d;
        carriers[i] = carrier;
        queue.Enqueue(i);
    }

    private double Level((int X, int Y) a, (int X, int Y) b)
    {
        double dx = (a.X - b.X) * grid.PitchX,
            dy = (a.Y - b.Y) * grid.PitchY;
        return Math.Sqrt(dx * dx + dy * dy);
    }
}
