using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Parts.SqueezeTab;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Light.Tests;

public class SqueezeTabTests
{
    // Slots from 0.3 to 0.6 and from 0.9 to 1.4 mm above the plate: borders of layers of 0.05 mm.
    private static readonly TestObject Made = TestObject.Of(
        new TestObjectSpec
        {
            Squeeze = new SqueezeSpec { Heights = [0.3, 0.5], Bar = 0.3 },
        }
    );
    private static readonly LayerLight Light = new(new WorkingCurve(0.12, 8), 4, 2.5, 0.05);

    /// <summary>Roofs lie on the grid of 0.12 micrometres.</summary>
    private const double OnGrid = 2e-4;

    [Fact]
    public void UnderAThickRoofTheTabsPrintThroughIsThatOfTheComb()
    {
        IReadOnlyList<double> gaps = Gaps();
        Assert.Equal(0.5 - Light.PrintThrough(), gaps[^1], OnGrid);
        // A bar of 0.3 mm lets through less light: six layers of q = exp(-0.05 / 0.12), and hardly any from beyond the
        // next slot.
        Assert.InRange(
            0.3 - gaps[0],
            Light.PrintThrough(6) - OnGrid,
            Light.PrintThrough(6) + 0.12 * Math.Exp(-0.8 / 0.12) * 2
        );
    }

    [Fact]
    public void BaseLayersCloseOnlySlotsBelowTheirLast()
    {
        // The roof of the first slot lies at 0.6 mm: 12 layers end there, the 13th is the first above it.
        Assert.Equal(Gaps()[0], Gaps(12, 60)[0], 1e-12);
        Assert.True(Gaps(13, 60)[0] < Gaps()[0] - 0.1);
        Assert.Equal(1, Gaps(14, 200).Count(g => g > 0));
    }

    private static IReadOnlyList<double> Gaps(int baseLayers = 0, double baseTime = 0) =>
        new PrintedObject(
            Made,
            new GaussianBlur(0.02),
            new LayerLight(Light.Curve, 4, 2.5, 0.05, baseLayers, baseTime)
        ).SqueezeGaps();
}
