using CalibGeom.Verification.Clearances;
using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Tests.Uncertainty;
using FsCheck.Xunit;

namespace CalibGeom.Verification.Tests.Clearances;

public class OwnJointTests
{
    private static ClearancePrediction Of(double s, double g, PredictionOptions? options = null) =>
        ClearancePrediction.Of(StandardObject.Table, StandardObject.Exact(s, g, s, g), options);

    [Property(MaxTest = 30)]
    public void ItFollowsTheModel(short a, short b, byte c)
    {
        double s = a / 5e6,
            g = b / 8e5,
            design = c / 1000.0;
        OwnJoint own = Of(s, g).For(20, 20 + 2 * design, 0.03);
        foreach (OwnJointAxis axis in own.Axes)
        {
            Near.Absolute(design * (1 + s) - 2 * g, axis.Clearance.Value, 1e-9);
            Near.Absolute(20 * (1 + s) + 2 * g, axis.Peg.Value, 1e-8);
        }
        // The sizes for a wanted clearance give it.
        ClearancePrediction p = Of(s, g);
        Near.Absolute(0.03, p.For(20, own.HoleForWanted.Value).Axes[0].Clearance.Value, 1e-9);
        Near.Absolute(0.03, p.For(own.PegForWanted.Value, own.HoleNominal).Axes[1].Clearance.Value, 1e-9);
        Near.Relative(1, own.Fits.Values.Sum(), 1e-6);
    }

    [Fact]
    public void AnotherPrintIsLessCertainThanThisOne()
    {
        ClearancePrediction p = Of(0, 0.01);
        double same = p.Joints[0].Axes[0].Model.StandardUncertainty,
            next = p.For(8, 8.1).Axes[0].Clearance.StandardUncertainty;
        // Both prints differ from the mean: twice 0.005 mm of growth each, in squares; clearance moves by twice growth.
        Near.Absolute(Math.Sqrt(same * same + 2 * 0.01 * 0.01), next, 3e-4);
        AxisClearance joint = p.Joints[0].Axes[0];
        double one = joint.Clearance.StandardUncertainty;
        Near.Absolute(Math.Sqrt(one * one + 0.01 * 0.01), joint.Mean.StandardUncertainty, 1e-9);
        Near.Absolute(Math.Sqrt(one * one + 2 * 0.01 * 0.01), joint.Next.StandardUncertainty, 1e-9);
        // One print says nothing of the spread: the default is believed with four degrees of freedom.
        Assert.True(joint.Next.DegreesOfFreedom < 20);
        Assert.Contains(p.For(8, 8.1).Findings, f => f.Rule == "next-print-assumed");
        PredictionOptions set = new() { BetweenPrints = 0.005 };
        Assert.Empty(Of(0, 0.01, set).For(8, 8.1).Findings);
        Assert.True(Of(0, 0.01, set).Joints[0].Axes[0].Next.Expanded < joint.Next.Expanded);
    }

    [Fact]
    public void ItIsComparedWithIsoFits()
    {
        // 0.04 mm per side is 80 um across: within H9/e8 (40 to 125) at 20 mm, far from H7/p6.
        OwnJoint own = Of(0, 0.03).For(20, 20.2);
        Near.Absolute(0.04, own.Axes[0].Clearance.Value, 1e-9);
        Assert.Contains(own.IsoFits.Take(3), f => f.Fit == "H9/e8");
        Assert.True(own.IsoFits.Single(f => f.Fit == "H7/p6").Probability < 0.02);
        // The peg is 0.06 too large: half of IT11 (0.130) holds it, half of IT10 (0.084) does not.
        Assert.Equal("IT11", own.Axes[0].PegGrade.ToString());
        Assert.Empty(Of(0, 0.03).For(60, 60.2).IsoFits);
    }

    [Fact]
    public void AFitHasToHoldOnBothAxes()
    {
        // 0.12 mm across in X, 0.24 in Y. H11/c11 at 20 mm is 0.110 to 0.370 (ISO 286-2): X alone decides, their mean
        // would be far inside.
        OwnJoint own = ClearancePrediction
            .Of(StandardObject.Table, StandardObject.Exact(0, 0.02, 0, -0.01))
            .For(20, 20.2);
        double u = 2 * own.Axes[0].Clearance.StandardUncertainty,
            x = 2 * own.Axes[0].Clearance.Value;
        Near.Absolute(0.12, x, 1e-9);
        Near.Absolute(
            MathNet.Numerics.Distributions.Normal.CDF(0, u, x - 0.110),
            own.IsoFits.Single(f => f.Fit == "H11/c11").Probability,
            1e-3
        );
        // Each axis has the hole that gives it the wanted clearance.
        Assert.All(
            own.Axes,
            a => Near.Absolute(own.Wanted, (a.HoleForWanted.Value - 20) / 2 - 2 * (a.Axis == "x" ? 0.02 : -0.01), 1e-9)
        );
        // H9/d9 is 0.065 to 0.169: Y is far outside.
        Assert.True(own.IsoFits.Single(f => f.Fit == "H9/d9").Probability < 0.02);
    }

    [Fact]
    public void FeltFitsOfTheObjectCountForIt()
    {
        ReadingSet sizes = StandardObject.Exact(0, 0.01, 0, 0.01);
        var felt = new ReadingSet(sizes.Readings.Append(Reading.Felt("joint1.fit", FeltFit.Binds)));
        double plain = ClearancePrediction.Of(StandardObject.Table, sizes).For(20, 20.1).Axes[0].Clearance.Value;
        Assert.True(
            ClearancePrediction
                .Of(StandardObject.Table, felt, new PredictionOptions { Draws = 8_000 })
                .For(20, 20.1)
                .Axes[0]
                .Clearance.Value
                < plain - 0.002
        );
    }

    [Fact]
    public void NonsenseIsRefused()
    {
        ClearancePrediction p = Of(0, 0.01);
        Assert.Throws<ArgumentException>(() => p.For(0, 1));
        Assert.Throws<ArgumentException>(() => p.For(20, double.NaN));
        Assert.Throws<ArgumentException>(() => p.For(20, 30));
        Assert.Throws<ArgumentException>(() => p.For(20, 20.2, 3));
    }

    [Property(MaxTest = 30)]
    public void CompensationGivesNominalSizes(short a, short b)
    {
        double s = a / 5e6,
            g = b / 8e5;
        ClearancePrediction p = Of(s, g, new PredictionOptions { PixelPitch = 0.05, GreyLevels = true });
        foreach (CompensatedSize size in p.CompensatedSizes())
        {
            CompensationAxis c = p.Compensation.Single(k => size.Feature.Axis == k.Axis);
            if (c is { ScaleDistinct: true, OffsetDistinct: true })
            {
                Near.Absolute(size.Nominal, size.Compensated, 1e-8);
                Near.Absolute(size.Nominal, size.WholePixels!.Value, 0.0505);
            }
        }
        Near.Absolute(p.Compensation[0].EdgeOffset.Value / 0.05, p.Compensation[0].EdgeOffsetPixels!.Value, 1e-12);
    }

    [Fact]
    public void OnlyWhatIsDistinctFromZeroIsCompensated()
    {
        CompensationAxis both = Of(-0.01, 0.05).Compensation[0];
        Assert.True(both.ScaleDistinct && both.OffsetDistinct);
        Near.Absolute(1 / 0.99, both.ScaleFactor.Value, 1e-9);
        Near.Absolute(-0.05 / 0.99, both.EdgeOffset.Value, 1e-9);
        CompensationAxis none = Of(1e-4, 0.001).Compensation[0];
        Assert.False(none.ScaleDistinct || none.OffsetDistinct);
        Assert.Equal(1, none.ScaleFactor.Value);
        Assert.Equal(0, none.EdgeOffset.Value);
        Assert.True(none.EdgeOffset.Expanded > 0.001);
        // With the scale left alone growth is that which fits without a scale, and is known better.
        AxisEstimate axis = Of(1e-4, 0.04).Axes[0];
        CompensationAxis grown = Of(1e-4, 0.04).Compensation[0];
        Assert.True(grown is { ScaleDistinct: false, OffsetDistinct: true });
        Assert.True(grown.EdgeOffset.StandardUncertainty < axis.Growth.StandardUncertainty);
    }

    [Fact]
    public void GradesAreThoseOfTheMeasuredSizes()
    {
        ClearancePrediction p = Of(0, 0.01);
        // 0.02 mm off at 8 mm: half of IT10 (0.058) holds it, half of IT9 (0.036) does not; but one reading is known to
        // about 0.03 only, and half of IT11 (0.090) is the least that holds that.
        Assert.Equal("IT11 or better", p.Grades.Single(g => g.Feature == "box1.outside.x").Grade!.ToString());
        Assert.Equal(p.Grades.Max(g => g.Grade!.Grade), p.OverallGrade);
        Near.Absolute(-0.02, p.Grades.Single(g => g.Feature == "box2.inside.y").Deviation, 1e-9);
    }

    [Fact]
    public void GaugesWouldNarrowMostButNotHalveWhatChangesAlongTheScale()
    {
        IReadOnlyList<Improvement> list = Of(0, 0.01).Improvements();
        Assert.InRange(list[0].Ratio, 0.5, 0.75);
        Assert.Contains("gauge block", list[0].Action, StringComparison.Ordinal);
        Assert.All(list, i => Assert.InRange(i.Ratio, 0, 1.0001));
        // From outside faces alone an inside face is worth more than repeats.
        string[] outside = ["box1.outside.x", "box2.outside.x"];
        IReadOnlyList<Improvement> few = ClearancePrediction
            .Of(StandardObject.Table, StandardObject.Exact(0, 0.01, 0, 0.01, outside))
            .Improvements();
        Assert.Contains(few, i => i.Action.Contains("span.x", StringComparison.Ordinal));
        Assert.DoesNotContain(few, i => i.Action.Contains("measure box1.outside.x ", StringComparison.Ordinal));
    }
}
