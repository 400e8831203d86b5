namespace CalibGeom.Inspection.Layers;

internal sealed partial class FreshPixels
{
    // Lines of pixels at most 9.3 degrees from any direction: one pixel a step along x, or along y when steep, and so
    // many thirds of one aside.
    private static readonly (bool Steep, int Thirds)[] Directions =
    [
        .. Enumerable.Range(-3, 7).Select(t => (false, t)),
        .. Enumerable.Range(-2, 5).Select(t => (true, t)),
    ];

    // A line along a single side, from notch to notch, never leaves it; a long one across a bend of it leaves it little
    // for its length, while one between two sides is half its length away in its middle when it is square to them.
    private const double LeastDepth = 1.6,
        LeastShare = 0.25;

    private readonly List<int> line = [];
    private readonly List<CarriedLine> carriedLines = [];

    /// <summary>
    /// The shortest straight line through a pixel, among twelve directions, that is carried at both ends by different
    /// sides, mm; infinite when none is, and within a pixel of what carries it.
    /// </summary>
    internal double Span(int i) => span[i];

    /// <summary>All lines of pixels between two that are lit below, on one side or on two.</summary>
    internal IReadOnlyList<CarriedLine> CarriedLines => carriedLines;

    /// <summary>Measures <see cref="Span"/>, once the distances are known.</summary>
    /// <param name="carriedBridge">mm; up to this length a line across a bend counts too.</param>
    /// <param name="keepLines">Whether <see cref="CarriedLines"/> are wanted.</param>
    internal void MeasureSpans(double carriedBridge, bool keepLines)
    {
        carriedLines.Clear();
        foreach ((bool steep, int thirds) in Directions)
        {
            int[] steps = [Step(steep, thirds, 0), Step(steep, thirds, 1), Step(steep, thirds, 2)];
            double slope = thirds / 3.0,
                step = steep
                    ? double.Hypot(slope * grid.PitchX, grid.PitchY)
                    : double.Hypot(grid.PitchX, slope * grid.PitchY);
            int back = (steps[2] + Neighbours / 2) % Neighbours;
            for (int i = 0; i < Count; i++)
                if ((lit[i] >> back & 1) != 0)
                    Walk(i, back, steps, step, carriedBridge, keepLines);
        }
    }

    /// <summary>The direction from pixel k of a line to the next; the same after three.</summary>
    private static int Step(bool steep, int thirds, int k)
    {
        int aside = Aside(k + 1) - Aside(k);
        return Array.IndexOf(Around, steep ? (aside, 1) : (1, aside));

        int Aside(int n) => (int)Math.Floor(n * thirds / 3.0 + 0.5);
    }

    private void Walk(int first, int back, int[] steps, double step, double carriedBridge, bool keep)
    {
        line.Clear();
        double depth = 0;
        int at = first;
        for (int k = 0; ; k = (k + 1) % 3)
        {
            line.Add(at);
            depth = Math.Max(depth, distance[at]);
            int next = Neighbour(at, steps[k]);
            if (next >= 0)
            {
                at = next;
                continue;
            }
            if (LitBelow(at, steps[k]) is not { } end)
                return;
            double length = line.Count * step;
            if (keep)
                carriedLines.Add(new CarriedLine(first, LitBelow(first, back)!.Value, end, length));
            if (depth < LeastDepth * Math.Max(grid.PitchX, grid.PitchY))
                return;
            if (length > carriedBridge && depth < LeastShare * length)
                return;
            foreach (int i in line)
                span[i] = Math.Min(span[i], length);
            return;
        }
    }
}
