using CalibGeom.TestObjects.Parts;

namespace CalibGeom.TestObjects.Layout;

/// <summary>
/// The straight lines through openings, held against convex shapes round what stands elsewhere: no more pass than past
/// the solids themselves.
/// </summary>
/// <param name="obstacles">What may be in the way.</param>
internal sealed class SightLines(IReadOnlyList<Obstacle> obstacles)
{
    /// <summary>
    /// The least share of lines that must pass every opening: 0.3 is to be seen, and a little for what a sample of
    /// lines tells wrong.
    /// </summary>
    internal const double LeastShare = 0.32;

    /// <summary>Into how many parts each side of an opening's two mouths is cut.</summary>
    private const int Cuts = 8;

    /// <summary>
    /// What is known before any solid is made: all that is tall counts as its rectangles and as endlessly high.
    /// </summary>
    /// <param name="placed">The parts in place.</param>
    /// <param name="plinth">The plinth.</param>
    /// <param name="top">Its top above the plate, mm.</param>
    internal static SightLines Of(IEnumerable<Placement> placed, Rect plinth, double top) =>
        new([
            Obstacle.Of("", plinth, top),
            .. from p in placed
            where p.Placed.Height == PartHeight.Tall
            from r in p.Placed.Solids
            select Obstacle.Of(p.Part.Name, r, double.PositiveInfinity),
        ]);

    /// <summary>What is known of made solids.</summary>
    internal static SightLines Of(IEnumerable<MadeBody> bodies) =>
        new([.. from b in bodies from l in b.Lofts select Obstacle.Of(b.Owner, l)]);

    /// <summary>The opening that the smallest share of lines passes, and that share; 1 without openings.</summary>
    internal (string Owner, int Opening, double Share) Worst(IEnumerable<Placement> placed)
    {
        (string Owner, int Opening, double Share) worst = ("", 0, 1);
        foreach (Placement owner in placed)
            for (int i = 0; i < owner.Placed.Openings.Count; i++)
                if (Share(owner.Part.Name, owner.Placed.Openings[i]) is var share && share < worst.Share)
                    worst = (owner.Part.Name, i, share);
        return worst;
    }

    /// <summary>The share of the lines between the two mouths of an opening that meet nothing beyond them.</summary>
    private double Share(string owner, Opening opening)
    {
        Obstacle[] others = [.. obstacles.Where(o => o.Owner != owner)];
        var met = new List<(double From, double To, Obstacle Other)>();
        int free = 0;
        for (int a = 0; a < Cuts; a++)
        for (int b = 0; b < Cuts; b++)
        {
            Meet(opening, a, b, others, met);
            free += HeightsFree(opening, met);
        }
        return free / Math.Pow(Cuts, 4);
    }

    /// <summary>What a line from one mouth to the other meets, and on which part of its way.</summary>
    private static void Meet(
        Opening opening,
        int a,
        int b,
        Obstacle[] others,
        List<(double From, double To, Obstacle Other)> met
    )
    {
        met.Clear();
        Rect room = opening.Room;
        ((double X, double Y) first, (double X, double Y) second) = opening.AlongX
            ? ((room.X0, Middle(room.Y0, room.Y1, a)), (room.X1, Middle(room.Y0, room.Y1, b)))
            : ((Middle(room.X0, room.X1, a), room.Y0), (Middle(room.X0, room.X1, b), room.Y1));
        foreach (Obstacle other in others)
            if (other.Within(first, second) is { } way)
                met.Add((way.From, way.To, other));
    }

    /// <summary>How many pairs of heights at both mouths lead a line over or under all that it meets.</summary>
    private static int HeightsFree(Opening opening, List<(double From, double To, Obstacle Other)> met)
    {
        if (met.Count == 0)
            return Cuts * Cuts;
        int free = 0;
        for (int a = 0; a < Cuts; a++)
        for (int b = 0; b < Cuts; b++)
        {
            double from = Middle(opening.Floor, opening.Roof, a),
                rise = Middle(opening.Floor, opening.Roof, b) - from;
            if (PassesAll(met, from, rise))
                free++;
        }
        return free;
    }

    private static bool PassesAll(List<(double From, double To, Obstacle Other)> met, double from, double rise)
    {
        // A loop: an object is asked for some hundred thousand lines.
        foreach ((double start, double end, Obstacle other) in met)
            if (Meets(other, from + start * rise, from + end * rise))
                return false;
        return true;
    }

    private static bool Meets(Obstacle other, double z0, double z1) =>
        Math.Max(z0, z1) > other.Bottom && Math.Min(z0, z1) < other.Top;

    private static double Middle(double low, double high, int cut) => low + (high - low) * (cut + 0.5) / Cuts;
}
