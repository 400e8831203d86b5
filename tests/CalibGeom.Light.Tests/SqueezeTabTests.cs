using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Light.Tests;

public class SqueezeTabTests
{
    private static readonly TestObject Made = TestObjectBuilder.Build(new TestObjectSpec());
    private static readonly LayerLight Light = new(new WorkingCurve(0.12, 8), 4, 2.5, 0.05);

    [Fact]
    public void UnderAThickRoofTheTabsPrintThroughIsThatOfTheComb()
    {
        double slot = Made.Spec.Squeeze!.SlotHeight;
        IReadOnlyList<double> gaps = Gaps();
        Assert.Equal(slot - Light.PrintThrough(), gaps[^1], 1e-9);
        // A bar of 0.3 mm lets through less light: six layers of q = exp(-0.05 / 0.12), and hardly any from beyond the
        // next slot.
        Assert.InRange(slot - gaps[0], Light.PrintThrough(6), Light.PrintThrough(6) + 0.12 * Math.Exp(-0.8 / 0.12) * 2);
    }

    [Fact]
    public void BaseLayersCloseOnlySlotsBelowTheirLast()
    {
        // The roof of the first slot lies at 0.8 mm: 16 layers end there, the 17th is the first above it.
        Assert.Equal(Gaps()[0], Gaps(16, 60)[0], 1e-12);
        Assert.True(Gaps(17, 60)[0] < Gaps()[0] - 0.1);
        Assert.Equal(4, Gaps(22, 200).Count(g => g > 0));
    }

    private static IReadOnlyList<double> Gaps(int baseLayers = 0, double baseTime = 0) =>
        new PrintedObject(
            Made,
            new GaussianBlur(0.02),
            new LayerLight(Light.Curve, 4, 2.5, 0.05, baseLayers, baseTime)
        ).SqueezeGaps();
}
