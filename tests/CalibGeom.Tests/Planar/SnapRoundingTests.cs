using CalibGeom.Planar;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace CalibGeom.Tests.Planar;

public class SnapRoundingTests
{
    /// <summary>Segments in so small a square that everything crosses and touches everything.</summary>
    public static Arbitrary<(GridPoint A, GridPoint B)[]> Segments() =>
        (
            from n in Gen.Choose(1, 16)
            from size in Gen.Elements(4, 12, 100, 5000)
            from c in Gen.Choose(0, size).ArrayOf(4 * n)
            select Enumerable
                .Range(0, n)
                .Select(i => (A: new GridPoint(c[4 * i], c[4 * i + 1]), B: new GridPoint(c[4 * i + 2], c[4 * i + 3])))
                .Where(s => s.A != s.B)
                .ToArray()
        ).ToArbitrary();

    [Property(MaxTest = 150, Arbitrary = [typeof(SnapRoundingTests)])]
    public void ChainsMeetOnlyInVertices((GridPoint A, GridPoint B)[] segments)
    {
        if (segments.Length == 0)
            return;
        var snapped = new SnapRounding(segments);
        var pieces = new HashSet<(GridPoint, GridPoint)>();
        for (int s = 0; s < segments.Length; s++)
        {
            ReadOnlySpan<int> chain = snapped.Chain(s);
            Assert.Equal(segments[s].A, snapped.Vertices[chain[0]]);
            Assert.Equal(segments[s].B, snapped.Vertices[chain[^1]]);
            for (int i = 1; i < chain.Length; i++)
            {
                (GridPoint a, GridPoint b) = (snapped.Vertices[chain[i - 1]], snapped.Vertices[chain[i]]);
                pieces.Add(a < b ? (a, b) : (b, a));
            }
        }
        (GridPoint, GridPoint)[] all = [.. pieces];
        for (int i = 0; i < all.Length; i++)
        for (int j = 0; j < i; j++)
            Assert.False(MeetsBeyondEnds(all[i], all[j]), $"{all[i]} meets {all[j]}");
    }

    [Property(MaxTest = 200, Arbitrary = [typeof(SnapRoundingTests)])]
    public void NoVertexIsFurtherThanAPixelFromItsSegment((GridPoint A, GridPoint B)[] segments)
    {
        if (segments.Length == 0)
            return;
        var snapped = new SnapRounding(segments);
        for (int s = 0; s < segments.Length; s++)
        {
            (GridPoint a, GridPoint b) = segments[s];
            double length = Math.Sqrt(Math.Pow(b.X - a.X, 2) + Math.Pow(b.Y - a.Y, 2));
            foreach (int v in snapped.Chain(s))
                Assert.True(Math.Abs(Predicates.Cross(a, b, snapped.Vertices[v])) / length <= Math.Sqrt(0.5) + 1e-9);
        }
    }

    private static bool MeetsBeyondEnds((GridPoint A, GridPoint B) s, (GridPoint A, GridPoint B) t)
    {
        bool onEnd = s.A == t.A || s.A == t.B || s.B == t.A || s.B == t.B;
        if (!onEnd)
            return Predicates.SegmentsTouch(s.A, s.B, t.A, t.B);
        foreach (GridPoint p in (GridPoint[])[s.A, s.B])
            if (p != t.A && p != t.B && Predicates.OnSegment(t.A, t.B, p))
                return true;
        foreach (GridPoint p in (GridPoint[])[t.A, t.B])
            if (p != s.A && p != s.B && Predicates.OnSegment(s.A, s.B, p))
                return true;
        return false;
    }
}
