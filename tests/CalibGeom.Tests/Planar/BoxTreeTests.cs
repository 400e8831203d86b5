using CalibGeom.Planar;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace CalibGeom.Tests.Planar;

public class BoxTreeTests
{
    /// <summary>
    /// Long segments of nearly one direction, some units apart: enough that the tree turns its boxes.
    /// </summary>
    public static Arbitrary<(GridPoint A, GridPoint B)[]> Bundles() =>
        (
            from x in Gen.Choose(-2000, 2000)
            from y in Gen.Choose(-2000, 2000)
            from apart in Gen.Choose(1, 40)
            from bend in Gen.Choose(0, 20)
            from c in Gen.Choose(0, bend).ArrayOf(4 * 300)
            select Enumerable
                .Range(0, 300)
                .Select(i =>
                    (
                        A: new GridPoint(c[4 * i] + i * apart, c[4 * i + 1]),
                        B: new GridPoint(c[4 * i + 2] + i * apart + x, c[4 * i + 3] + y)
                    )
                )
                .ToArray()
        ).ToArbitrary();

    [Property(MaxTest = 40, Arbitrary = [typeof(BoxTreeTests)])]
    public void NoPairThatTouchesIsLeftOut((GridPoint A, GridPoint B)[] segments)
    {
        HashSet<(int, int)> found = Pairs(segments);
        for (int i = 0; i < segments.Length; i++)
        for (int j = 0; j < i; j++)
            if (Predicates.SegmentsTouch(segments[i].A, segments[i].B, segments[j].A, segments[j].B))
                Assert.Contains((j, i), found);
    }

    [Property(MaxTest = 40, Arbitrary = [typeof(BoxTreeTests)])]
    public void NoPixelThatASegmentPassesIsLeftOut((GridPoint A, GridPoint B)[] segments)
    {
        GridPoint[] pixels = [.. segments.Select(s => s.A), .. segments.Select(s => s.B)];
        var found = new HashSet<(int, int)>();
        BoxTree
            .OfSegments(segments)
            .Pairs(BoxTree.OfSegments(Array.ConvertAll(pixels, p => (p, p))), (s, i) => found.Add((s, i)));
        for (int s = 0; s < segments.Length; s++)
        for (int i = 0; i < pixels.Length; i++)
            if (
                Predicates.InBox(segments[s].A, segments[s].B, pixels[i])
                && SnapRounding.PassesThrough(segments[s].A, segments[s].B, pixels[i])
            )
                Assert.Contains((s, i), found);
    }

    /// <summary>
    /// Spikes that stay long while they stand ever closer lie in the bounds of ever more neighbours; how many are
    /// looked at stays the same for each (by their bounds alone some 30 and 120). Counted, so that it does not
    /// depend on the machine.
    /// </summary>
    [Fact]
    public void SpikesAreHeldAgainstFewOfTheirNeighbours()
    {
        Assert.InRange(Pairs(Spikes(4_000)).Count / 4_000.0, 1, 12);
        Assert.InRange(Pairs(Spikes(16_000)).Count / 16_000.0, 1, 12);
    }

    private static (GridPoint, GridPoint)[] Spikes(int edges)
    {
        GridPoint[] ring = Zigzag.Of(edges, 100, 90);
        return [.. ring.Select((p, i) => (p, ring[(i + 1) % edges]))];
    }

    private static HashSet<(int, int)> Pairs((GridPoint, GridPoint)[] segments)
    {
        var found = new HashSet<(int, int)>();
        BoxTree
            .OfSegments(segments)
            .Pairs(
                (i, j) =>
                {
                    Assert.True(found.Add(i < j ? (i, j) : (j, i)), $"{i} and {j} twice");
                    return true;
                }
            );
        return found;
    }
}
