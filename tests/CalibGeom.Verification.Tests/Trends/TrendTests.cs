using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Trends;
using CalibGeom.Verification.Trends.Changes;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Tests.Trends;

/// <summary>What trend says of logs whose story is known.</summary>
public class TrendTests
{
    private static readonly TrialConditions Conditions = new(0.05, "Demo grey", "bench");

    private static Trial Print(double growth, int? day = null, int? open = null, TrialConditions? conditions = null) =>
        new(new ExposureSettings(2.5, 1), conditions ?? Conditions)
        {
            Date = day is { } d ? new DateOnly(2026, 1, 10).AddDays(d) : null,
            Instrument = "cal",
            Digest = "0123456789abcdef",
            GrowthX = new GrowthReading(growth + 0.001, 0.002, 0.0115),
            GrowthY = new GrowthReading(growth - 0.001, 0.002, 0.0115),
            Slots = open is { } n ? new SlotOutcome(SlotOutcome.StandardHeights, n) : null,
        };

    private static LogEntry[] Log(params Trial[] trials) =>
        trials.Select((t, i) => new LogEntry(i + 1, t, false)).ToArray();

    private static void NoContradiction(TrendAnswer answer)
    {
        Assert.Equal("trend-verdict", answer.Findings[0].Rule);
        Assert.Single(answer.Findings, f => f.Rule == "trend-verdict");
        string[] moved = ["trend-size", "trend-since", "trend-crosses", "trend-correct"];
        if (answer.Verdict is TrendVerdict.NotSeenToMove or TrendVerdict.NotEnoughData)
            Assert.DoesNotContain(answer.Findings, f => moved.Contains(f.Rule) || f.Severity == Severity.Error);
        if (answer.Verdict == TrendVerdict.Recalibrate)
            Assert.DoesNotContain(answer.Findings, f => f.Message.Contains("Not seen", StringComparison.Ordinal));
        Assert.All(answer.Findings, f => Assert.DoesNotContain("NaN", f.Message, StringComparison.Ordinal));
    }

    [Fact]
    public void NineMonthsOfFallingGrowthAreADriftWithADate()
    {
        double[] growths = [0.010, 0.005, 0.0005, -0.004, -0.009];
        TrendAnswer answer = TrendAnswer.Of(Log(growths.Select((g, i) => Print(g, 67 * i)).ToArray()));
        Assert.Contains(answer.Verdict, new[] { TrendVerdict.Drifting, TrendVerdict.Recalibrate });
        TrendChange change = answer.Result.Change!;
        Assert.True(change.DriftProbability > 0.5);
        Assert.True(change.LogLight.Value < 0);
        Assert.NotNull(answer.Result.DayOf(change.Since.Value));
        Assert.InRange(change.Growth!.Value.Value, -0.021, -0.008);
        Amount growth = change.Growth.Value;
        Assert.Contains(
            FormattableString.Invariant(
                $"clearance by {-2 * growth.Value:+0.000;-0.000} mm ({-2 * growth.High:+0.000;-0.000} to {-2 * growth.Low:+0.000;-0.000})"
            ),
            answer.Findings.Single(f => f.Rule == "trend-size").Message,
            StringComparison.Ordinal
        );
        Assert.Contains(
            answer.Findings,
            f => f.Rule == "trend-since" && f.Message.Contains("2026-", StringComparison.Ordinal)
        );
        NoContradiction(answer);
    }

    /// <summary>
    /// Three to one for chance where evidence just reaches its limit, and that much less for each time more; from 0.05
    /// on it is said, and the interval of light holds no change.
    /// </summary>
    [Theory]
    [InlineData(0.001, true)]
    [InlineData(0.000, true)]
    [InlineData(-0.012, false)]
    public void WhatIsSeenJustSoMayBeChance(double after, bool mayBe)
    {
        double[] growths = [.. Enumerable.Repeat(0.010, 6), .. Enumerable.Repeat(after, 4)];
        TrendAnswer answer = TrendAnswer.Of(Log([.. growths.Select((g, i) => Print(g, 7 * i))]));
        TrendChange change = answer.Result.Change!;
        Assert.Equal(1 / (1 + 0.3 * answer.Result.Evidence[^1]), change.ChanceProbability, 1e-9);
        Assert.Equal(mayBe, change.ChanceProbability > 0.05);
        Assert.Equal(mayBe, answer.Findings.Any(f => f.Rule == "trend-chance"));
        Assert.Equal(mayBe, change.LogLight.High > 0);
        string light = answer.Findings.Single(f => f.Rule == "trend-light").Message;
        Assert.Matches(mayBe ? @"% less light \(\d+ % less to \d+ % more\)" : @"% \(\d+ to \d+ %\) less light", light);
        NoContradiction(answer);
    }

    [Fact]
    public void WordsAloneTellThatItMovesAndNotSinceWhen()
    {
        FeltFit[] words =
        [
            FeltFit.Slides,
            FeltFit.Slides,
            FeltFit.Slides,
            FeltFit.Rattles,
            FeltFit.Rattles,
            FeltFit.Rattles,
            FeltFit.Rattles,
        ];
        TrendAnswer Answer(bool measured) =>
            TrendAnswer.Of(
                Log([
                    .. words.Select(
                        (w, i) =>
                            Print(-0.004 * i, 7 * i) with
                            {
                                GrowthX = measured ? new GrowthReading(w == FeltFit.Slides ? 0 : -0.03, 0.002) : null,
                                GrowthY = null,
                                Joints = [new JointOutcome("joint1", 0.05, w), new JointOutcome("joint2", 0.05, w)],
                            }
                    ),
                ])
            );
        TrendAnswer felt = Answer(false),
            read = Answer(true);
        Assert.NotNull(felt.Result.Change);
        Assert.Equal(0, felt.Result.Change.Since.Low);
        Assert.Contains("cannot tell when it set out", Since(felt), StringComparison.Ordinal);
        // By caliper the step lies between the third and the fourth coupon, and the words are not asked.
        Assert.InRange(read.Result.Change!.Since.Low, 7, 21);
        Assert.DoesNotContain("Words", Since(read), StringComparison.Ordinal);
        NoContradiction(felt);
    }

    private static string Since(TrendAnswer answer) => answer.Findings.Single(f => f.Rule == "trend-since").Message;

    [Fact]
    public void HalfTheLightIsNeverTheSameState()
    {
        // The comb closes less, growth falls by 0.02 mm: a witness at 49 % of the light after a confirmed calibration.
        Trial[] calibration = [Print(0.010, 0, 5), Print(0.012, 1, 5), Print(0.011, 2, 5)];
        Trial witness = Print(-0.013, 30, 7);
        StateEnd? end = StateEnd.Of([.. calibration, witness]);
        Assert.NotNull(end);
        Assert.Equal(3, end.Index);
        Assert.Null(StateEnd.Of(calibration));
        TrendAnswer answer = TrendAnswer.Of(
            Log([.. calibration, witness, witness with { Date = new DateOnly(2026, 3, 1) }])
        );
        Assert.Equal(TrendVerdict.Recalibrate, answer.Verdict);
        // Two coupons do not tell the exposure that lands; that light is lacking they do.
        Assert.InRange(answer.Result.Change!.Correction!.LogLight, -3, -0.1);
        Assert.Equal(answer.Result.Change.Correction.Probability >= TrendAnswer.Lands, answer.Correction is not null);
        NoContradiction(answer);
    }

    [Fact]
    public void SteadyCouponsAreNotSeenToMoveAndTheAnswerSaysWhatWouldHaveBeenSeen()
    {
        var random = new SeededRandom(5);
        Trial[] prints = Enumerable.Range(0, 12).Select(i => Print(0.01 + 0.003 * random.Normal(), 7 * i, 5)).ToArray();
        TrendAnswer answer = TrendAnswer.Of(Log(prints));
        Assert.Equal(TrendVerdict.NotSeenToMove, answer.Verdict);
        Assert.InRange(answer.Result.WouldBeSeen!.Value, 0.05, 0.5);
        NoContradiction(answer);
    }

    [Fact]
    public void OneCouponIsNotEnoughAndTheAnswerSaysHowManyMore()
    {
        TrendAnswer answer = TrendAnswer.Of(Log(Print(0.01, 0, 5)));
        Assert.Equal(TrendVerdict.NotEnoughData, answer.Verdict);
        Assert.InRange(answer.Result.MoreCoupons ?? 99, 2, 30);
        NoContradiction(answer);
    }

    [Theory]
    [InlineData("layer")]
    [InlineData("resin")]
    [InlineData("bottle")]
    [InlineData("film")]
    [InlineData("screen")]
    [InlineData("vat")]
    public void ANewConditionCallsForANewCalibrationAndIsNoDrift(string what)
    {
        // Common practice, no source.
        TrialConditions before = new(0.05, "Demo grey", "bench", temperatureStart: 25)
        {
            Film = "a",
            Screen = "s",
            Bottle = "1",
        };
        TrialConditions after = what switch
        {
            "layer" => new(0.03, "Demo grey", "bench", temperatureStart: 25)
            {
                Film = "a",
                Screen = "s",
                Bottle = "1",
            },
            "resin" => new(0.05, "Demo blue", "bench", temperatureStart: 25)
            {
                Film = "a",
                Screen = "s",
                Bottle = "1",
            },
            "vat" => new(0.05, "Demo grey", "bench", temperatureStart: 29)
            {
                Film = "a",
                Screen = "s",
                Bottle = "1",
            },
            "bottle" => before with { Bottle = "2" },
            "film" => before with { Film = "b" },
            _ => before with { Screen = "t" },
        };
        TrendAnswer answer = TrendAnswer.Of(
            Log(
                Print(0.01, 0, 5, before),
                Print(0.01, 1, 5, before),
                Print(0.01, 8, 5, before),
                Print(-0.02, 15, 7, after)
            )
        );
        Assert.Equal(TrendVerdict.Recalibrate, answer.Verdict);
        Assert.Equal($"trend-{what}", Assert.Single(answer.Triggers).Rule);
        Assert.Null(answer.Result.Change);
        NoContradiction(answer);
    }

    [Fact]
    public void SixMonthsOfFrequentUseCallForANewCalibration()
    {
        // Common practice, no source.
        Trial[] Weekly(int weeks) =>
            Enumerable
                .Range(0, weeks)
                .Select(i => Print(0.01 + 0.002 * (i % 2), 7 * i, 5) with { HoursSince = 10 })
                .ToArray();
        TrendAnswer used = TrendAnswer.Of(Log(Weekly(28)));
        Assert.Equal("trend-use", Assert.Single(used.Triggers).Rule);
        Assert.StartsWith(
            "The coupons themselves show no movement. ",
            used.Findings.Single(f => f.Rule == "trend-coupons").Message,
            StringComparison.Ordinal
        );
        Assert.Empty(TrendAnswer.Of(Log(Weekly(20))).Triggers);
        Assert.Empty(TrendAnswer.Of(Log(Weekly(28)), months: 0).Triggers);
        Assert.Empty(TrendAnswer.Of(Log(Weekly(28).Select(t => t with { HoursSince = 1 }).ToArray())).Triggers);
    }

    [Theory]
    [InlineData(21.5, true)]
    [InlineData(22, false)]
    [InlineData(30, false)]
    [InlineData(30.5, true)]
    public void AVatBeyondItsSoundRangeIsSaid(double vat, bool said)
    {
        // 22 to 30 degrees C: common practice, no source.
        TrialConditions conditions = new(0.05, "Demo grey", "bench", temperatureStart: vat);
        TrendAnswer answer = TrendAnswer.Of(Log(Print(0.01, 0, 5, conditions)));
        Assert.Equal(said, answer.Findings.Any(f => f.Rule == "trend-vat"));
    }

    [Fact]
    public void AnotherCaliperIsNoDrift()
    {
        Trial[] prints = Enumerable
            .Range(0, 16)
            .Select(i =>
                Print(i < 8 ? 0.010 + 0.002 * (i % 2) : 0.040 + 0.002 * (i % 2), 7 * i) with
                {
                    Instrument = i < 8 ? "old" : "new",
                }
            )
            .ToArray();
        TrendAnswer answer = TrendAnswer.Of(Log(prints));
        Assert.Null(answer.Result.Change);
        Assert.Contains(answer.Findings, f => f.Rule == "trend-caliper");
        // The same with one caliper is a step.
        Assert.NotNull(TrendAnswer.Of(Log(prints.Select(p => p with { Instrument = "old" }).ToArray())).Result.Change);
    }

    [Fact]
    public void ACombThatCountsTheSameIsNoNewsAndOneThatCountsAnotherPassedTheHeightBetween()
    {
        TrendSegment segment = TrendLog.Of(Log(Print(0, 0, 5), Print(0, 1, 5), Print(0, 2, 6), Print(0, 3, 3))).Current;
        GaugeValue?[] told = segment
            .Points.Select(p => p.Values.SingleOrDefault(v => v.Gauge == Gauge.PrintThrough))
            .ToArray();
        // Heights 0.16 to 0.80 in tenths of a decade: five open lie above 0.25 mm, six above 0.20, three above 0.40.
        Assert.Equal([0.2825, 0.25, 0.45], told.OfType<GaugeValue>().Select(v => Math.Round(v.Value, 4)));
        Assert.Null(told[1]);
        // Uniform over the step (JCGM 100, 4.3.7), and the judgement of a slot at the height between.
        Assert.Equal(0.065 / Math.Sqrt(12), told[0]!.Uncertainty, 1e-9);
        Assert.Equal(0.015, told[2]!.Uncertainty, 1e-9);
        Assert.Equal(0.1 / Math.Sqrt(12), told[3]!.Uncertainty, 1e-9);
        Assert.All(segment.Read, p => Assert.Contains(p.Values, v => v.Gauge == Gauge.PrintThrough));
    }

    [Fact]
    public void ASharedBiasChangesNothing()
    {
        double[] growths = [0.01, 0.012, 0.009, 0.004, -0.002, -0.009, -0.02];
        double[] Evidence(double bias) =>
            TrendAnswer.Of(Log(growths.Select((g, i) => Print(g + bias, 7 * i)).ToArray())).Result.Evidence.ToArray();
        foreach ((double a, double b) in Evidence(0).Zip(Evidence(0.05)))
            Assert.Equal(a, b, 1e-3 * (1 + a));
    }

    [Fact]
    public void LogsOutOfOrderMixedAndUndatedKeepEverything()
    {
        Trial a = Print(0.01, 10, 5),
            b = Print(0.012, 3, 5),
            c = Print(0.011, 3, 5);
        TrendAnswer answer = TrendAnswer.Of(Log(a, b, c));
        Assert.Equal(["print 2", "print 3", "print 1"], answer.Result.Points.Select(p => p.Name));
        Assert.Contains(answer.Findings, f => f.Rule == "trend-order");
        TrendAnswer undated = TrendAnswer.Of(Log(a, b with { Date = null }, c));
        Assert.Equal(["print 1", "print 2", "print 3"], undated.Result.Points.Select(p => p.Name));
        Assert.Contains(undated.Findings, f => f.Rule == "trend-no-date" && f.Subject == "print 2");
        TrendAnswer mixed = TrendAnswer.Of(
            Log(a, Print(0.05, 11, 3, new TrialConditions(0.05, "Demo blue", "bench")), Print(0.01, 12, 5))
        );
        Assert.Equal(2, mixed.Log.Segments.Count);
        Assert.Equal(2, mixed.Result.Points.Count);
        Assert.Contains(mixed.Findings, f => f.Rule == "trend-apart" && f.Subject == "print 2");
        Assert.Throws<InputException>(() => TrendAnswer.Of([]));
        Assert.Throws<InputException>(() => TrendAnswer.Of([new LogEntry(1, a, true)]));
    }

    [Fact]
    public void EqualDatesAreCouponsOfOneDay()
    {
        TrendAnswer answer = TrendAnswer.Of(Log(Print(0.01, 0, 5), Print(0.012, 0, 5), Print(0.011, 0, 5)));
        Assert.All(answer.Result.Evidence, e => Assert.True(double.IsFinite(e)));
        NoContradiction(answer);
    }

    [Fact]
    public void ResidualsAreStandardNormalWhateverTheUncertainties()
    {
        // Whitened innovations must be independent with variance 1 for a series whose uncertainties change tenfold.
        var random = new SeededRandom(11);
        double square = 0,
            lag = 0,
            count = 0;
        for (int run = 0; run < 200; run++)
        {
            TrendPoint[] points = Enumerable
                .Range(0, 10)
                .Select(i =>
                {
                    double u = i % 2 == 0 ? 0.001 : 0.01,
                        e = 0.005 * random.Normal();
                    return new TrendPoint([
                        new GaugeValue(Gauge.Growth, "x", 0.3 + e + u * random.Normal(), u),
                        new GaugeValue(Gauge.Growth, "y", -0.1 + e + u * random.Normal(), u),
                    ]);
                })
                .ToArray();
            CouponFilter filter = CouponFilter.Of(points, TrendOptions.Default);
            for (int n = 1; n < 10; n++)
            {
                square += filter.Observed[n].Sum(o => o * o);
                count += 2;
                lag += filter.Observed[n][0] * filter.Observed[n][1];
            }
        }
        // 3,600 squares: standard error 0.024.
        Assert.InRange(square / count, 0.92, 1.08);
        Assert.InRange(lag / (count / 2), -0.08, 0.08);
    }

    [Fact]
    public void TheLikelihoodRatioOfAStepIsThatOfDenseGaussianAlgebra()
    {
        // One series, known constant factor: a step of prior deviation s before coupon 3, by brute force.
        double[] values = [0.010, 0.013, 0.009, 0.030, 0.026, 0.033];
        TrendPoint[] points = values
            .Select(v => new TrendPoint([new GaugeValue(Gauge.Growth, "x", v, 0.003)]))
            .ToArray();
        CouponFilter filter = CouponFilter.Of(points, TrendOptions.Default);
        var step = new ChangeCase(filter, [0, 1, 2, 3, 4, 5], 1, false, 3);
        double[] response = [1, 0, 0];
        double u2 = 0.003 * 0.003 + 0.005 * 0.005;
        // With a free mean: information of a difference of two means of three.
        double information = 1 / (u2 / 3 + u2 / 3),
            difference = values.Skip(3).Average() - values.Take(3).Average();
        Assert.Equal(information, step.Information(5, response), information * 1e-4);
        Assert.Equal(information * difference, step.Score(5, response), information * difference * 1e-4);
    }

    /// <summary>
    /// Ten coupons a week apart, each 0.002 mm below the one before: of the 0.025 mm that 0.05 mm of clearance leave,
    /// 0.018 are used, and what remains takes three and a half weeks.
    /// </summary>
    [Fact]
    public void ADriftWithinItsToleranceTellsWhenItLeavesIt()
    {
        Trial[] prints = [.. Enumerable.Range(0, 10).Select(i => Print(0.010 - 0.002 * i, 7 * i))];
        var wide = new TrendOptions { Tolerance = 0.05, LightTolerance = 0.9 };
        Amount crosses = TrendAnswer.Of(Log(prints), wide).Result.Change!.Crosses!.Value;
        Assert.InRange(crosses.Value, 63 + 10, 63 + 50);
        Assert.InRange(crosses.Low, 63, crosses.Value);
        Assert.True(crosses.High > crosses.Value);
        // What has left it already does not leave it again.
        Assert.Null(TrendAnswer.Of(Log(prints), wide with { Tolerance = 0.02 }).Result.Change!.Crosses);
    }

    /// <summary>Where growth was read a correction is judged by clearance, else by light.</summary>
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void ACorrectionIsJudgedByWhatWasRead(bool growth)
    {
        Trial[] prints =
        [
            .. Enumerable
                .Range(0, 12)
                .Select(i =>
                {
                    Trial print = Print(i < 6 ? 0.010 : -0.025, 7 * i, i < 6 ? 5 : 7);
                    return growth ? print : print with { GrowthX = null, GrowthY = null };
                }),
        ];
        double Lands(double tolerance, double light) =>
            TrendAnswer
                .Of(Log(prints), new TrendOptions { Tolerance = tolerance, LightTolerance = light })
                .Result.Change!.Correction!.Probability;
        double least = Lands(0.02, 0.1);
        Assert.InRange(least, 0.01, 0.99);
        Assert.Equal(growth, Lands(0.06, 0.1) > least + 0.01);
        Assert.Equal(!growth, Lands(0.02, 0.3) > least + 0.01);
    }

    [Fact]
    public void BadOptionsAreRefused()
    {
        Assert.Throws<ArgumentException>(() => new TrendOptions { RunLength = 5 });
        Assert.Throws<ArgumentException>(() => new TrendOptions { Baseline = 0 });
        Assert.Throws<ArgumentException>(() => new TrendOptions { Tolerance = 0 });
        Assert.Throws<ArgumentException>(() => new TrendOptions { LightTolerance = 1 });
        Assert.Throws<ArgumentException>(() => new GaugeValue(Gauge.Growth, "", 0, 1));
        Assert.Throws<ArgumentException>(() => new GaugeValue(Gauge.Growth, "x", 0, 0));
    }
}
