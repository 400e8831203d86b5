using CalibGeom.TestObjects.Parts;
using CalibGeom.TestObjects.Parts.SqueezeTab;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Tests.TestObjects;

/// <summary>
/// The bar that carries the squeeze tab, under the loads that necks are held against: the film pulls with 10 kPa on all
/// that a layer has, resin pushes with 1 kPa on a face, and green resin bears 10 MPa in bending (assumed: no table of
/// green resin is published).
/// </summary>
public class TabStrengthTests
{
    private const double Pull = 0.010,
        Push = 0.001,
        MostBending = 10,
        Width = Proportions.TabBarWidth,
        Height = Proportions.TabBar;

    public static TheoryData<string> Names =>
        [.. Presets.All.Where(p => p.Spec.Squeeze is not null).Select(p => p.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void TheBarBearsFilmAndResinAsIfTheTabDidNotStandOnThePlate(string name)
    {
        TestObjectSpec spec = Presets.Find(name)!.Spec;
        var shape = new TabShape(spec.Squeeze!, spec.Plinth.Thickness);
        double free = TabShape.Reach + Proportions.TabPostInset;
        // A cantilever from the post's side: the whole free bar is pulled off the film; section modulus b h^2 / 6.
        double pulled = Pull * Width * free * (free / 2) / (Width * Height * Height / 6);
        // Pushed along the edge on the tab's whole side; section modulus h b^2 / 6.
        double face = shape.Top * (TabShape.Reach - Proportions.TabGap),
            lever = (TabShape.Reach + Proportions.TabGap) / 2 + Proportions.TabPostInset;
        double pushed = Push * face * lever / (Height * Width * Width / 6);
        Assert.InRange(pulled, 0.1, MostBending / 5);
        Assert.InRange(pushed, 0.01, MostBending / 5);
    }

    /// <summary>What docs/test-object.md says of scraping: how firmly the tab's foot may hold to the plate.</summary>
    [Fact]
    public void TheTabLiftsBeforeItsBarBreaksUpToAThirdOfAMegapascal()
    {
        double foot = Proportions.TabDepth * (TabShape.Reach - Proportions.TabGap),
            lever = (TabShape.Reach + Proportions.TabGap) / 2 + Proportions.TabPostInset;
        double holds = MostBending * Width * Height * Height / 6 / (foot * lever);
        Assert.Equal(0.35, holds, 0.02);
    }
}
