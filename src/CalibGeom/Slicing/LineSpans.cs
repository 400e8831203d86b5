using CalibGeom.Planar;

namespace CalibGeom.Slicing;

/// <summary>
/// Cuts a layer with parallel lines, one through the middle of each row or column of pixels, and measures walls and
/// gaps between edges that face each other. Widths come from the exact polygons, so they do not depend on where pixels
/// fall. Where shells overlap, only the outside of all of them counts.
/// </summary>
internal sealed class LineSpans
{
    // Edges that face each other within 20 degrees make a wall; lines within 45 degrees of square to it measure it.
    private const double Facing = -0.94;
    private const double Squareness = 0.7;
    private const double Nothing = 0.001;

    // Half a degree: edges that run together more slowly are a wall.
    private const double LeastHalfAngle = 0.25 * Math.PI / 180;
    private readonly bool across;
    private readonly double origin;
    private readonly double pitch;
    private readonly double limit;
    private readonly int[] starts;
    private readonly List<Edge> edges = [];
    private readonly List<double> lengths = [];
    private readonly List<Crossing> crossings = [];
    private Crossing[] sorted = [];

    /// <summary>
    /// Lines along x, or along y when <paramref name="across"/>; only what is narrower than the limit (mm) is found.
    /// </summary>
    internal LineSpans(PixelGrid grid, bool across, double limit)
    {
        this.across = across;
        this.limit = limit;
        origin = across ? grid.Origin.X : grid.Origin.Y;
        pitch = across ? grid.PitchX : grid.PitchY;
        starts = new int[(across ? grid.Width : grid.Height) + 1];
    }

    internal void Measure(LayerContours layer, Action<ThinSample> visit)
    {
        edges.Clear();
        lengths.Clear();
        crossings.Clear();
        for (int i = 0; i < layer.Count; i++)
            AddContour(layer[i]);
        SortByLine();
        for (int line = 0; line + 1 < starts.Length; line++)
        {
            Span<Crossing> here = sorted.AsSpan(starts[line], starts[line + 1] - starts[line]);
            here.Sort();
            for (int i = 0, winding = 0, change = 0; i < here.Length; i++)
            {
                bool wasSolid = winding > 0;
                winding += here[i].Leaves ? -1 : 1;
                if (wasSolid == winding > 0)
                    continue;
                if (i > 0)
                    Try(here[change], here[i], wasSolid, visit);
                change = i;
            }
        }
    }

    private void Try(Crossing a, Crossing b, bool solid, Action<ThinSample> visit)
    {
        double length = b.At - a.At;
        if (length < Nothing || length * Squareness > limit)
            return;
        Edge e = edges[a.Edge],
            f = edges[b.Edge];
        if (Math.Abs(e.Along) < Squareness || Math.Abs(f.Along) < Squareness)
            return;
        if (e.Along * f.Along + e.Beside * f.Beside > Facing)
            return;
        double width = length * (Math.Abs(e.Along) + Math.Abs(f.Along)) / 2;
        if (width > limit - 1e-6 || IsCorner(a, b, width))
            return;
        double middle = (a.At + b.At) / 2,
            line = Place(a.Line);
        visit(new ThinSample(across ? line : middle, across ? middle : line, width, solid, false));
    }

    /// <summary>
    /// Whether two edges run together in a corner: the way along the contour from one place to the other is that over
    /// the tip, w / sin(angle / 2). A wall that tapers but ends blunt is none.
    /// </summary>
    private bool IsCorner(Crossing a, Crossing b, double width)
    {
        Edge e = edges[a.Edge],
            f = edges[b.Edge];
        if (e.Ring != f.Ring)
            return false;
        double half = Math.Acos(Math.Clamp(-(e.Along * f.Along + e.Beside * f.Beside), -1, 1)) / 2;
        if (half < LeastHalfAngle)
            return false;
        double way = Math.Abs(e.ArcAt(Place(a.Line)) - f.ArcAt(Place(a.Line)));
        double ratio = Math.Min(way, lengths[e.Ring] - way) * Math.Sin(half) / width;
        return Math.Abs(ratio - 1) < 0.25;
    }

    private void AddContour(ReadOnlySpan<Vector2D> ring)
    {
        double arc = 0;
        for (int i = 0, j = ring.Length - 1; i < ring.Length; j = i++)
        {
            Vector2D way = ring[i] - ring[j];
            double next = arc + Math.Sqrt(way.X * way.X + way.Y * way.Y);
            // Swapping the axes mirrors the ring; running its edges backward keeps material on the left.
            if (across)
                AddEdge(new(ring[i].Y, ring[i].X), new(ring[j].Y, ring[j].X), next, arc);
            else
                AddEdge(ring[j], ring[i], arc, next);
            arc = next;
        }
        lengths.Add(arc);
    }

    private void AddEdge(Vector2D a, Vector2D b, double arcA, double arcB)
    {
        double from = Math.Min(a.Y, b.Y),
            to = Math.Max(a.Y, b.Y);
        int line = (int)Math.Max(0, Math.Ceiling((from - origin) / pitch - 0.5));
        while (Place(line) < from)
            line++;
        if (Place(line) >= to)
            return;
        double length = Math.Abs(arcB - arcA);
        edges.Add(
            new Edge((b.Y - a.Y) / length, (b.X - a.X) / length, lengths.Count, arcA, a.Y, (arcB - arcA) / (b.Y - a.Y))
        );
        for (double y; line + 1 < starts.Length && (y = Place(line)) < to; line++)
            crossings.Add(new Crossing(line, a.X + (y - a.Y) * (b.X - a.X) / (b.Y - a.Y), b.Y > a.Y, edges.Count - 1));
    }

    private double Place(int line) => origin + (line + 0.5) * pitch;

    private void SortByLine()
    {
        Array.Clear(starts);
        foreach (Crossing c in crossings)
            starts[c.Line + 1]++;
        for (int line = 1; line < starts.Length; line++)
            starts[line] += starts[line - 1];
        if (sorted.Length < crossings.Count)
            sorted = new Crossing[Math.Max(crossings.Count, 2 * sorted.Length)];
        int[] next = starts.AsSpan().ToArray();
        foreach (Crossing c in crossings)
            sorted[next[c.Line]++] = c;
    }

    /// <summary>An edge's direction, its ring, and where along the ring's length it crosses a line.</summary>
    private readonly record struct Edge(
        double Along,
        double Beside,
        int Ring,
        double Arc,
        double From,
        double ArcPerLine
    )
    {
        internal double ArcAt(double line) => Arc + (line - From) * ArcPerLine;
    }

    /// <summary>
    /// Sorted along the line; at one place the edges that enter material come first, so that touching shells leave no
    /// gap.
    /// </summary>
    private readonly record struct Crossing(int Line, double At, bool Leaves, int Edge) : IComparable<Crossing>
    {
        public int CompareTo(Crossing other) =>
            At != other.At ? At.CompareTo(other.At) : Leaves.CompareTo(other.Leaves);
    }
}
