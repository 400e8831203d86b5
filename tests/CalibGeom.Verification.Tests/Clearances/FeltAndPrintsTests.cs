using CalibGeom.Verification.Clearances;
using CalibGeom.Verification.Decisions;
using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Tests.Uncertainty;

namespace CalibGeom.Verification.Tests.Clearances;

/// <summary>Felt fits as one person's, and several prints.</summary>
public class FeltAndPrintsTests
{
    private static readonly PredictionOptions Few = new() { Draws = 20_000 };

    private static ReadingSet Sizes(double growth, params Reading[] more) =>
        new(
            StandardObject.Exact(0, growth, 0, growth).Readings.Concat(more),
            state: PartState.PostCured,
            material: Material.Rigid
        );

    private static ClearancePrediction Of(params ReadingSet[] prints) =>
        ClearancePrediction.Of(StandardObject.Table, prints, Few);

    [Fact]
    public void AWordRepeatedIsNearlyNoNews()
    {
        Reading slides = Reading.Felt("joint1.fit", FeltFit.Binds);
        double plain = Of(Sizes(0.01)).Joints[0].Axes[0].Clearance.Value,
            once = Of(Sizes(0.01, slides)).Joints[0].Axes[0].Clearance.Value,
            often = Of(Sizes(0.01, [.. Enumerable.Repeat(slides, 8)])).Joints[0].Axes[0].Clearance.Value;
        Assert.True(once < plain - 0.003);
        // Seven more of the same move it by less than the first did.
        Assert.InRange(once - often, -0.002, 0.7 * (plain - once));
    }

    [Fact]
    public void WhatContradictsWithholdsTheHeadlineAndLeavesTheSizes()
    {
        ClearancePrediction plain = Of(Sizes(-0.05)),
            p = Of(Sizes(-0.05, Reading.Felt("joint1.fit", FeltFit.Refuses)));
        Assert.Contains(p.Findings, f => f.Rule == "felt-fits-contradict");
        Assert.All(p.Joints, j => Assert.NotNull(j.Withheld));
        Assert.All(PredictionText.Sentences(p), s => Assert.Contains("no answer", s, StringComparison.Ordinal));
        Assert.Contains("no answer", PredictionText.Sentence(p.For(20, 20.2)), StringComparison.Ordinal);
        Assert.Equal(plain.Joints[0].Axes[0].Clearance, p.Joints[0].Axes[0].Clearance);
        Assert.Equal(plain.GrowthDifference, p.GrowthDifference);
    }

    [Fact]
    public void AfterAFeltFitEveryNumberIsOfOneStateOfKnowledge()
    {
        ClearancePrediction p = Of(Sizes(0.01, Reading.Felt("joint1.fit", FeltFit.Rattles)));
        foreach (AxisClearance c in p.Joints.SelectMany(j => j.Axes))
        {
            Near.Relative(c.Clearance.StandardUncertainty, c.Budget.StandardUncertainty, 1e-9);
            Near.Absolute(c.Clearance.Value, c.Budget.Value, 1e-9);
            Near.Absolute(1, c.Budget.Components.Sum(k => k.Share), 1e-6);
        }
        Near.Absolute(p.Axes[0].Growth.Value - p.Axes[1].Growth.Value, p.GrowthDifference!.Difference.Value, 1e-9);
        Near.Absolute(1, p.Joints[0].Fits.Values.Sum(), 1e-6);
    }

    [Fact]
    public void TheSentenceOnFurtherPrintsNamesTheSpreadThatIsReckonedWith()
    {
        ClearancePrediction two = Of(Sizes(-0.01), Sizes(0.03));
        Finding told = Assert.Single(NextPrintFindings.Of(two.Variation));
        Assert.True(two.Variation.StandardDeviation > 2 * PredictionOptions.DefaultBetweenPrints);
        Assert.Equal(two.Variation.StandardDeviation, told.Value);
        Assert.Contains(
            FormattableString.Invariant($"vary by {two.Variation.StandardDeviation:0.0000} mm"),
            told.Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void SeveralPrintsTeachHowMuchTheyDiffer()
    {
        double[] growths = [-0.01, 0.005, 0.02, 0.03, 0.006];
        ClearancePrediction wild = Of([.. growths.Select(g => Sizes(g))]),
            calm = Of([.. growths.Select(g => Sizes(0.01 + g / 100))]);
        Assert.Equal(5, wild.Variation.Prints);
        Assert.True(wild.Variation.StandardDeviation > 0.01);
        Assert.True(calm.Variation.StandardDeviation < 0.005);
        Near.Absolute(8, wild.Variation.DegreesOfFreedom, 1e-9);
        AxisClearance joint = wild.Joints[0].Axes[0];
        Near.Absolute(0.05 - 2 * growths.Average(), joint.Clearance.Value, 1e-3);
        Assert.True(joint.Next.Expanded > 1.5 * joint.Mean.Expanded);
        Assert.True(joint.Mean.Expanded < Of(Sizes(0.01)).Joints[0].Axes[0].Mean.Expanded);
        Assert.DoesNotContain(wild.For(20, 20.2).Findings, f => f.Rule == "next-print-assumed");
    }

    [Fact]
    public void TheSamePrintTwiceIsRefused()
    {
        InputException e = Assert.Throws<InputException>(() => Of(Sizes(0.01), Sizes(0.01)));
        Assert.Contains("same readings", e.Message, StringComparison.Ordinal);
        var dry = new ReadingSet(Sizes(0.02).Readings, state: PartState.Dry);
        Assert.Contains(
            "state",
            Assert.Throws<InputException>(() => Of(Sizes(0.01), dry)).Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void LimitsAreJudgedOnEachJointAndPrintsHaveACapability()
    {
        var options = new PredictionOptions { Limits = new ToleranceLimits(-0.05, 0.15) };
        ReadingSet[] prints = [.. Enumerable.Range(0, 5).Select(k => Sizes(0.008 + 0.001 * k))];
        AxisClearance joint = ClearancePrediction.Of(StandardObject.Table, prints, options).Joints[0].Axes[0];
        Assert.Equal(Verdict.Conforms, joint.Decision!.Verdict);
        // Growth steps of 0.001 are clearance steps of 0.002: s = 0.002 sqrt(2.5), mean 0.03, nearer limit 0.08 away.
        Near.Relative(0.2 / (6 * 0.002 * Math.Sqrt(2.5)), joint.Capability!.Cp, 1e-6);
        Near.Relative(0.08 / (3 * 0.002 * Math.Sqrt(2.5)), joint.Capability.Cpk, 1e-6);
        Assert.Null(ClearancePrediction.Of(StandardObject.Table, prints[..4], options).Joints[0].Axes[0].Capability);
        Assert.Null(Of(Sizes(0.01)).Joints[0].Axes[0].Decision);
    }

    [Fact]
    public void AThinPlinthIsEvidenceAndTheTabIsHeldAgainstIt()
    {
        ClearancePrediction p = Of(
            Sizes(
                0.01,
                Reading.Size("plinth.thickness", 1.9),
                Reading.Count("slots.open", 5),
                Reading.Count("squeeze.open", 5)
            )
        );
        Assert.DoesNotContain(p.Findings, f => f.Rule == "reading-far-off");
        Near.Absolute(0.6, p.LowestLayers!.Lost.Value, 1e-9);
        Assert.True(p.LowestLayers is { Distinct: true, TabDisagrees: true });
        Assert.Contains(p.Findings, f => f.Rule == "squeeze-contradicts");
        ClearancePrediction alone = Of(Sizes(0.01, Reading.Size("plinth.thickness", 2.3)));
        Assert.Contains("zero", alone.Findings.Single(f => f.Rule == "lowest-layers-squeezed").Remedy);
    }

    [Fact]
    public void AnIsoFitNamesItsSizes()
    {
        // 20H7/g6 by ISO 286-1: hole 0/+21, shaft -7/-20 micrometres.
        IsoJoint joint = IsoJoint.Parse("20H7/g6")!;
        Near.Absolute(20 - 0.0135, joint.Peg, 1e-12);
        Near.Absolute(20.0105, joint.Hole, 1e-12);
        Near.Absolute(0.0035, joint.Limits.Low, 1e-12);
        Near.Absolute(0.0205, joint.Limits.High, 1e-12);
        Assert.Null(IsoJoint.Parse("20/20.2"));
        Assert.Throws<ArgumentException>(() => IsoJoint.Parse("20H7/z6"));
    }
}
