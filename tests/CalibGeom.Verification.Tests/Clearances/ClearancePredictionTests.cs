using CalibGeom.Verification.Clearances;
using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Tests.Uncertainty;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Tests.Clearances;

public class ClearancePredictionTests
{
    private static readonly FeatureTable Table = StandardObject.Table;

    // A fifth of the usual draws tells a word's pull well enough: what is asked here is only which way it goes.
    private static readonly PredictionOptions Fewer = new() { Draws = 8_000 };

    private static ClearancePrediction Predict(IEnumerable<Reading> readings, PredictionOptions? options = null) =>
        ClearancePrediction.Of(
            Table,
            new ReadingSet(readings, state: PartState.PostCured, material: Material.Rigid),
            options
        );

    private static IEnumerable<Reading> Sizes(double growth, params string[] ids) =>
        StandardObject.Exact(0, growth, 0, growth, ids.Length > 0 ? ids : null).Readings;

    [Fact]
    public void TwoFacesOfAnOrdinaryCaliperGiveAboutThreeHundredths()
    {
        // By hand: jaws (0.0115^2 + 0.017^2)/4, form 2 x 0.006^2/4, scatter 2 x 0.008^2/4, which has the step of
        // 0.01 in it, burrs on the peg 0.010^2/4. How a jaw's error splits does not change their sum.
        double u = Math.Sqrt(
            (0.0115 * 0.0115 + 0.017 * 0.017 + 2 * 0.006 * 0.006 + 2 * 0.008 * 0.008 + 0.01 * 0.01) / 4
        );
        Estimate direct = Predict(Sizes(0.01)).Joints[0].Axes[0].Direct!;
        Near.Relative(u, direct.StandardUncertainty, 1e-6);
        Near.Absolute(0.0264, direct.Expanded, 0.0005);
    }

    [Theory]
    [InlineData(0.02, 0.008)] // 0.02 / sqrt(12) = 0.0058: less than one value scatters
    [InlineData(0.05, 0.0144)] // 0.05 / sqrt(12) = 0.0144: more, so the step counts instead
    public void OfStepAndScatterOnlyTheLargerCounts(double step, double counts)
    {
        Reading[] sizes = Sizes(0.01).Select(r => Reading.Size(r.Feature, r.Value, "cal")).ToArray();
        Instrument caliper = Instrument.WithPermissibleError("cal", 0.02, step);
        Estimate direct = ClearancePrediction
            .Of(
                StandardObject.Table,
                new ReadingSet(sizes, [caliper], state: PartState.PostCured, material: Material.Rigid)
            )
            .Joints[0]
            .Axes[0]
            .Direct!;
        double others = (0.02 * 0.02 + 0.03 * 0.03) / 3 + 2 * 0.006 * 0.006 + 0.01 * 0.01;
        Near.Relative(Math.Sqrt((others + 2 * counts * counts) / 4), direct.StandardUncertainty, 2e-3);
    }

    [Fact]
    public void EverythingTogetherIsNoWorseThanTwoFacesOrTheModel()
    {
        foreach (AxisClearance c in Predict(Sizes(0.01)).Joints.SelectMany(j => j.Axes))
        {
            Assert.True(c.Clearance.StandardUncertainty <= c.Direct!.StandardUncertainty + 1e-12);
            Assert.True(c.Clearance.StandardUncertainty <= c.Model.StandardUncertainty + 1e-12);
            Near.Relative(1, c.Budget.Components.Sum(b => b.Share), 1e-9);
            Near.Relative(c.Clearance.StandardUncertainty, c.Budget.StandardUncertainty, 1e-12);
        }
    }

    [Fact]
    public void AGaugeBlockTakesAJawsBiasAway()
    {
        // Every outside reading is 0.02 too large and every inside reading 0.03 too small; gauges say so.
        IEnumerable<Reading> biased = Sizes(0.01)
            .Select(r => Reading.Size(r.Feature, r.Value + (r.Feature.Size == KnownFeatures.Inside ? -0.03 : 0.02)));
        Reading[] gauges = Enumerable
            .Range(0, 5)
            .SelectMany(_ =>
                new[] { Reading.Size("reference.outside.10", 10.02), Reading.Size("reference.inside.8", 7.97) }
            )
            .ToArray();
        ClearancePrediction without = Predict(biased),
            with = Predict(biased.Concat(gauges));
        Near.Absolute(0.005, without.Joints[0].Axes[0].Clearance.Value, 0.001);
        // What changes along the scale stays uncertain, so not all of it is believed.
        Near.Absolute(0.03, with.Joints[0].Axes[0].Clearance.Value, 0.005);
        Assert.True(with.Joints[0].Axes[0].Clearance.Expanded < 0.65 * without.Joints[0].Axes[0].Clearance.Expanded);
    }

    [Fact]
    public void RepeatsTeachTheScatterOfAnInstrument()
    {
        IEnumerable<Reading> rough = Sizes(0.01)
            .SelectMany(r => new[] { -0.04, 0, 0.04 }.Select(d => Reading.Size(r.Feature, r.Value + d)));
        IEnumerable<Reading> fine = Sizes(0.01)
            .SelectMany(r => new[] { -0.001, 0, 0.001 }.Select(d => Reading.Size(r.Feature, r.Value + d)));
        double Share(IEnumerable<Reading> r) =>
            Predict(r)
                .Joints[0]
                .Axes[0]
                .Budget.Components.Where(c => c.Evaluation == Evaluation.A)
                .Sum(c => c.Contribution);
        Assert.True(Share(rough) > 3 * Share(fine));
    }

    [Fact]
    public void OneFaceAloneAssumesAScaleAndSaysSo()
    {
        ClearancePrediction p = Predict(Sizes(0.01, "box1.outside.x"));
        Assert.Contains(p.Findings, f => f.Rule == "scale-assumed");
        Assert.Contains(p.Findings, f => f.Rule == "axis-not-measured");
        Assert.Single(p.Axes);
        Assert.Null(p.GrowthDifference);
        Near.Absolute(0.03, p.Joints[0].Axes[0].Clearance.Value, 1e-6);
        Assert.True(p.Joints[0].Axes[0].Clearance.Expanded > 0.05);
    }

    [Fact]
    public void ADifferenceBetweenAxesIsFound()
    {
        ClearancePrediction p = ClearancePrediction.Of(Table, StandardObject.Exact(0.002, 0.03, 0.002, -0.01));
        Near.Absolute(0.04, p.GrowthDifference!.Difference.Value, 1e-9);
        Assert.True(p.GrowthDifference.Probability < 1e-3);
        Assert.True(p.ScaleDifference!.Probability > 0.9);
        Assert.True(p.Axes[0].GrowthProbability < 0.01);
        // Biases of jaws are common to both axes and cancel in the difference.
        Assert.True(
            p.GrowthDifference.Difference.StandardUncertainty
                < 0.5 * p.Axes[0].Growth.StandardUncertainty * Math.Sqrt(2)
        );
    }

    [Fact]
    public void AGrossErrorIsNamedAndLeftOut()
    {
        Reading[] readings = Sizes(0.01)
            .Select(r => r.Feature == "box2.outside.y" ? Reading.Size(r.Feature, r.Value + 0.12) : r)
            .ToArray();
        ClearancePrediction p = Predict(readings);
        GrossError error = Assert.Single(p.GrossErrors);
        Assert.Equal("box2.outside.y", error.Feature);
        Near.Absolute(0.12, error.Distance, 1e-9);
        Assert.Contains("burr", error.LooksLike, StringComparison.Ordinal);
        Assert.Contains(p.Findings, f => f.Rule == "gross-error" && f.Subject == "box2.outside.y");
        Assert.Equal(readings.Length, p.Residuals.Count);
        Assert.True(Assert.Single(p.Residuals, r => r.IsAside).Standardised > 3);
        // Without it everything is exact again, and the joint it belongs to has no direct value.
        Near.Absolute(0.03, p.Joints[1].Axes[1].Clearance.Value, 1e-9);
        Assert.Null(p.Joints[1].Axes[1].Direct);
    }

    [Fact]
    public void FeltFitsMoveTheClearanceTowardsThem()
    {
        Reading[] sizes = Sizes(0.01).ToArray();
        double plain = Predict(sizes).Joints[0].Axes[0].Clearance.Value;
        double Felt(FeltFit fit) =>
            Predict([.. sizes, Reading.Felt("joint1.fit", fit)], Fewer).Joints[0].Axes[0].Clearance.Value;
        Assert.True(Felt(FeltFit.Refuses) < Felt(FeltFit.Binds));
        Assert.True(Felt(FeltFit.Binds) < plain);
        // At 0.05 mm rattling is improbable but no contradiction; at 0.03 it would be one.
        Assert.True(
            Predict([.. Sizes(0), Reading.Felt("joint1.fit", FeltFit.Rattles)], Fewer).Joints[0].Axes[0].Clearance.Value
                > 0.05
        );
        JointPrediction slid = Predict([.. sizes, Reading.Felt("joint1.fit", FeltFit.Slides)], Fewer).Joints[0];
        Assert.Equal(FeltFit.Slides, slid.Expected);
        Assert.True(slid.Axes[0].Clearance.Expanded < Predict(sizes).Joints[0].Axes[0].Clearance.Expanded);
        Near.Relative(1, slid.Fits.Values.Sum(), 1e-6);
    }

    [Fact]
    public void OneJointsFitTeachesAboutTheOther()
    {
        Reading[] sizes = Sizes(0).ToArray();
        ClearancePrediction felt = Predict([.. sizes, Reading.Felt("joint1.fit", FeltFit.Rattles)], Fewer),
            plain = Predict(sizes);
        Assert.True(felt.Joints[1].Axes[0].Clearance.Value > plain.Joints[1].Axes[0].Clearance.Value);
        Assert.True(felt.Axes[0].Growth.Value < plain.Axes[0].Growth.Value);
    }

    [Fact]
    public void AFitAgainstTheSizesIsSaid()
    {
        ClearancePrediction p = Predict([.. Sizes(-0.03), Reading.Felt("joint1.fit", FeltFit.Refuses)]);
        Assert.Contains(p.Findings, f => f.Rule == "felt-against-readings" && f.Subject == "joint1.fit");
    }

    [Fact]
    public void FitProbabilitiesByQuadratureAgreeWithDraws()
    {
        var options = new PredictionOptions { Draws = 40_000 };
        JointPrediction p = Predict(Sizes(0.01), options).Joints[0];
        JointPrediction drawn = Predict([.. Sizes(0.01)], options with { Route = Route.MonteCarlo }).Joints[0];
        foreach (FeltFit fit in Enum.GetValues<FeltFit>())
            Near.Absolute(p.Fits[fit], drawn.Fits[fit], 0.02);
        Near.Absolute(p.ProbabilityEnters, drawn.ProbabilityEnters, 0.02);
    }

    [Fact]
    public void MonteCarloIsNarrowerBecauseJawsAreRectangular()
    {
        var set = new ReadingSet(Sizes(0.01), [new Instrument("", repeatability: 0.004)], material: Material.Rigid);
        AxisClearance first = ClearancePrediction.Of(Table, set).Joints[0].Axes[0];
        AxisClearance drawn = ClearancePrediction
            .Of(Table, set, new PredictionOptions { Route = Route.MonteCarlo })
            .Joints[0]
            .Axes[0];
        Near.Absolute(first.Clearance.Value, drawn.Clearance.Value, 3e-4);
        Near.Relative(first.Clearance.StandardUncertainty, drawn.Clearance.StandardUncertainty, 0.01);
        Assert.InRange(drawn.Clearance.Expanded, 0.93 * first.Clearance.Expanded, 0.99 * first.Clearance.Expanded);
    }

    [Fact]
    public void FlexibleMaterialIsLessCertain()
    {
        var soft = new ReadingSet(Sizes(0.01), material: Material.Flexible);
        Assert.True(
            ClearancePrediction.Of(Table, soft).Joints[0].Axes[0].Clearance.Expanded
                > 1.3 * Predict(Sizes(0.01)).Joints[0].Axes[0].Clearance.Expanded
        );
    }

    [Fact]
    public void AnUnknownPixelPhaseWidensAndGreyLevelsTakeItAway()
    {
        double Half(PredictionOptions o) => Predict(Sizes(0.01), o).Joints[0].Axes[0].Model.Expanded;
        double plain = Half(new PredictionOptions()),
            phase = Half(new PredictionOptions { PixelPitch = 0.047 }),
            grey = Half(new PredictionOptions { PixelPitch = 0.047, GreyLevels = true });
        Assert.True(phase > 1.1 * plain);
        Near.Relative(plain, grey, 1e-12);
        // p sqrt(f (1 - f)) at half a pixel is half the pitch.
        Near.Relative(0.025, new PredictionOptions { PixelPitch = 0.05 }.PhaseError(8.025), 1e-9);
        Assert.Equal(0, new PredictionOptions { PixelPitch = 0.05 }.PhaseError(8.05));
    }

    [Fact]
    public void CouponsAreTakenOneAtATime()
    {
        Reading[] two = Sizes(0.01)
            .SelectMany(r =>
                new[] { Reading.Size("A1/" + r.Feature, r.Value), Reading.Size("B2/" + r.Feature, r.Value + 0.001) }
            )
            .ToArray();
        var set = new ReadingSet(two);
        Assert.Equal(["A1", "B2"], set.Coupons);
        InputException e = Assert.Throws<InputException>(() => ClearancePrediction.Of(Table, set));
        Assert.Contains("A1, B2", e.Message, StringComparison.Ordinal);
        Near.Absolute(0.03, ClearancePrediction.Of(Table, set.ForCoupon("A1")).Joints[0].Axes[0].Clearance.Value, 1e-9);
    }

    [Fact]
    public void ConditionsAreSaid()
    {
        var set = new ReadingSet(Sizes(0.01), digest: "ffffffffffffffff", temperature: 27, state: PartState.Washed);
        string[] rules = ClearancePrediction.Of(Table, set).Findings.Select(f => f.Rule).ToArray();
        Assert.Contains("digest-differs", rules);
        Assert.Contains("instrument-undeclared", rules);
        Assert.Contains("still-wet", rules);
        Assert.Contains(
            ClearancePrediction.Of(Table, new ReadingSet(Sizes(0.01))).Findings,
            f => f.Rule == "state-unknown"
        );
    }

    [Fact]
    public void NothingToPredictFromIsAnError()
    {
        Assert.Throws<InputException>(() => Predict([Reading.Size("box1.height", 12)]));
        InputException far = Assert.Throws<InputException>(() => Predict([Reading.Size("box1.outside.x", 80)]));
        Assert.Contains("set aside", far.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(2, null)]
    [InlineData(3, "1 of 3")]
    [InlineData(5, "3 of 5")]
    public void TheTabIsNotMoreOpenThanTheComb(int open, string? said)
    {
        // Print-through over 0.25 mm closes the tab's slots of 0.1, 0.16 and 0.25 mm: two are left.
        ClearancePrediction p = Predict([
            .. Sizes(0.01),
            Reading.Count("slots.open", 5),
            Reading.Count("squeeze.open", open),
        ]);
        Assert.Equal(said, p.Findings.SingleOrDefault(f => f.Rule == "tab-against-comb")?.Message[^7..^1]);
    }

    [Fact]
    public void TheResultLineSaysWhereItsFactorIsFrom()
    {
        string Line(double growth, FeltFit? felt)
        {
            Reading[] fits = felt is { } f ? [Reading.Felt("joint1.fit", f)] : [];
            return PredictionText.ResultLine("c", Predict([.. Sizes(growth), .. fits]).Joints[0].Axes[0].Clearance);
        }
        Assert.Matches(@"k = (1\.9[5-9]|2\.\d\d) \((\d+|many) degrees of freedom\)", Line(0.01, null));
        Assert.EndsWith(
            "(from the distribution drawn, JCGM 101), for a level of confidence of 95 %",
            Line(0.01, FeltFit.Slides),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void SlotsBracketPrintThroughAndTheTabGivesSqueeze()
    {
        ClearancePrediction p = Predict([
            .. Sizes(0.01),
            Reading.Count("slots.open", 5),
            Reading.Count("squeeze.open", 1),
        ]);
        // Heights 0.16 0.2 0.25 0.315 0.4 0.5 0.63 0.8: three closed.
        Assert.Equal(new Bracket(0.25, 0.315), p.PrintThrough);
        Near.Relative(0.065 / Math.Sqrt(12), p.PrintThrough!.StandardUncertainty, 1e-12);
        // Heights 0.1 0.16 0.25 0.4 0.5: print-through of 0.25 to 0.315 closes three alone, the fourth lost what it
        // left of
        // 0.4; the fifth, open, lost less than it left of 0.5.
        Near.Absolute(0.4 - 0.315, p.Squeeze!.Low, 1e-12);
        Near.Absolute(0.4 - 0.25 + 0.5 - 0.25, p.Squeeze.High, 1e-12);
        ClearancePrediction dark = Predict([
            .. Sizes(0.01),
            Reading.Count("slots.open", 0),
            Reading.Count("squeeze.open", 0),
        ]);
        Assert.Equal(double.PositiveInfinity, dark.PrintThrough!.High);
        Assert.Null(dark.Squeeze);
        Assert.Equal(new Bracket(0, 0.16), Predict([.. Sizes(0.01), Reading.Count("slots.open", 8)]).PrintThrough);
        Assert.Null(Predict(Sizes(0.01)).PrintThrough);
        // More open than there are says nothing.
        ClearancePrediction miscounted = Predict([
            .. Sizes(0.01),
            Reading.Count("slots.open", 9),
            Reading.Count("squeeze.open", 4),
        ]);
        Assert.Null(miscounted.PrintThrough);
        Assert.Null(
            Predict([.. Sizes(0.01), Reading.Count("slots.open", 5), Reading.Count("squeeze.open", 9)]).Squeeze
        );
        Assert.Contains(
            "set aside",
            miscounted.Findings.Single(f => f.Rule == "count-too-high").Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void HeightsGiveTheScaleOfZ()
    {
        ClearancePrediction p = Predict([
            .. Sizes(0.01),
            .. Enumerable.Range(1, 3).Select(b => Reading.Size($"box{b}.height", (10 + 2 * b) * 0.996)),
        ]);
        Near.Absolute(-0.004, p.HeightScale!.Value, 1e-9);
        Assert.InRange(p.HeightScale.Expanded, 0.002, 0.005);
    }

    [Fact]
    public void SentencesAnswerFirst()
    {
        string sentence = PredictionText.Sentences(Predict(Sizes(0.005)))[0];
        Assert.StartsWith("joint 1 should slide: 0.040 mm per side, 0.0", sentence, StringComparison.Ordinal);
        Assert.Contains("in X; 0.040 mm per side", sentence, StringComparison.Ordinal);
    }
}
