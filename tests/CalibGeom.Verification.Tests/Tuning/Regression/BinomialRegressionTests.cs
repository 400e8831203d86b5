using CalibGeom.Verification.Tuning.Regression;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace CalibGeom.Verification.Tests.Tuning.Regression;

public class BinomialRegressionTests
{
    /// <summary>Beetles (Bliss 1935), CHECKS.md 9.1: data READ.</summary>
    private static readonly BinomialGroup[] Beetles = BinomialGroup.Of(
        [1.6907, 1.7242, 1.7552, 1.7842, 1.8113, 1.8369, 1.8610, 1.8839],
        [59, 60, 62, 56, 63, 59, 62, 60],
        [6, 13, 18, 28, 52, 53, 61, 60]
    );

    /// <summary>Rotenone (Finney 1971), CHECKS.md 9.2: READ-2ND.</summary>
    private static readonly BinomialGroup[] Rotenone = BinomialGroup.Of(
        new[] { 10.2, 7.7, 5.1, 3.8, 2.6 }.Select(Math.Log10).ToArray(),
        [50, 49, 46, 48, 50],
        [44, 42, 24, 16, 6]
    );

    private static readonly double[] Male = [1, 4, 9, 13, 18, 20],
        Female = [0, 2, 6, 10, 12, 16];

    // CHECKS.md 9.1, COMPUTED (converged maximum, 25 digits).
    [Theory]
    [InlineData(
        "Logit",
        -60.7174545616,
        5.180711463,
        34.2703257341,
        2.912140071,
        -15.08215101,
        11.2322311,
        10.02681759,
        -186.235403272
    )]
    [InlineData(
        "Probit",
        -34.9352588992,
        2.647917799,
        19.7279342113,
        1.487235041,
        -3.93654385,
        10.11975811,
        9.513426963,
        -185.67916678
    )]
    [InlineData(
        "ComplementaryLogLog",
        -39.5723106061,
        3.24027262,
        22.0411698208,
        1.799355191,
        -5.82865149,
        3.446438733,
        3.294693834,
        -182.34250709
    )]
    public void BeetlesAreFitted(
        string link,
        double a,
        double ua,
        double b,
        double ub,
        double cov,
        double deviance,
        double pearson,
        double likelihood
    )
    {
        BinomialFit fit = BinomialRegression.Fit(Beetles, Enum.Parse<Link>(link));
        Assert.False(fit.Separated);
        Near(a, fit.Coefficients[0]);
        Near(b, fit.Coefficients[1]);
        Near(ua, fit.StandardError(0));
        Near(ub, fit.StandardError(1));
        Near(cov, fit.Covariance[0, 1]);
        Near(deviance, fit.Deviance);
        Near(pearson, fit.PearsonSquare);
        Near(likelihood, fit.LogLikelihood);
    }

    [Fact]
    public void BeetlesThatDiedAreFitted()
    {
        // CHECKS.md 9.1, COMPUTED.
        double[] killed = [3.45746, 9.84167, 22.4514, 33.8976, 50.0958, 53.2909, 59.2222, 58.743];
        BinomialFit fit = BinomialRegression.Fit(Beetles);
        for (int i = 0; i < killed.Length; i++)
            Assert.Equal(1, fit.Probability(Beetles[i].Covariates) * Beetles[i].Trials / killed[i], 1e-5);
    }

    [Fact]
    public void FirthPenalisesBeetles()
    {
        // CHECKS.md 9.1, COMPUTED.
        BinomialFit fit = BinomialRegression.Fit(Beetles, penalised: true);
        Near(-60.11377132, fit.Coefficients[0]);
        Near(33.93013045, fit.Coefficients[1]);
        Near(5.13114172, fit.StandardError(0));
        Near(2.88411866, fit.StandardError(1));
    }

    [Fact]
    public void FinneysRotenoneIsFitted()
    {
        // CHECKS.md 9.2, COMPUTED; published slope 4.21, chi square 1.73 (READ-2ND).
        BinomialFit probit = BinomialRegression.Fit(Rotenone, Link.Probit);
        Near(-2.88746325636, probit.Coefficients[0]);
        Near(4.21319675611, probit.Coefficients[1]);
        Near(0.3510398798, probit.StandardError(0));
        Near(0.4805617518, probit.StandardError(1));
        Near(-0.1627325528, probit.Covariance[0, 1]);
        Near(1.738968595, probit.Deviance);
        Near(1.728875032, probit.PearsonSquare);
        BinomialFit logit = BinomialRegression.Fit(Rotenone);
        Near(-4.886912276, logit.Coefficients[0]);
        Near(7.14617755594, logit.Coefficients[1]);
    }

    [Fact]
    public void BudwormsHaveACommonSlope()
    {
        // CHECKS.md 9.3: budworm of MASS, COMPUTED converged values.
        BinomialFit fit = BinomialRegression.Fit(Budworm());
        Near(-3.47315531, fit.Coefficients[0]);
        Near(-2.37241194, fit.Coefficients[1]);
        Near(1.06421397, fit.Coefficients[2]);
        Near(0.46852038, fit.StandardError(0));
        Near(0.38551085, fit.StandardError(1));
        Near(0.13107749, fit.StandardError(2));
        Near(6.757064232, fit.Deviance);
        Near(5.306017059, fit.PearsonSquare);
        Near(5.565963287, BinomialRegression.Fit(Budworm(), Link.Probit).Deviance);
    }

    [Fact]
    public void SeparationIsSeenAndFirthStaysFinite()
    {
        // CHECKS.md 9.4, COMPUTED.
        BinomialGroup[] apart = BinomialGroup.Of([1, 2, 3, 4, 5, 6], [1, 1, 1, 1, 1, 1], [0, 0, 0, 1, 1, 1]);
        Assert.True(BinomialRegression.Fit(apart).Separated);
        Assert.True(BinomialRegression.Fit(apart, Link.Probit).Separated);
        BinomialFit firth = BinomialRegression.Fit(apart, penalised: true);
        Assert.False(firth.Separated);
        Near(-3.95119371, firth.Coefficients[0]);
        Near(1.12891249, firth.Coefficients[1]);
        Near(3.18702529, firth.StandardError(0));
        Near(0.85490834, firth.StandardError(1));
        Assert.Equal(3.5, new LevelEstimate(firth, 0.5).Value, 1e-9);
    }

    [Fact]
    public void QuasiSeparationIsSeen() =>
        Assert.True(
            BinomialRegression
                .Fit(BinomialGroup.Of([1, 2, 3, 3, 4, 5], [1, 1, 1, 1, 1, 1], [0, 0, 0, 1, 1, 1]))
                .Separated
        );

    [Fact]
    public void OverlapIsNoSeparation() =>
        Assert.False(
            BinomialRegression
                .Fit(BinomialGroup.Of([1, 2, 3, 4, 5, 6], [1, 1, 1, 1, 1, 1], [0, 0, 1, 0, 1, 1]))
                .Separated
        );

    [Property(MaxTest = 60)]
    public Property FirthIsFiniteAndIndifferentToOrderAndGrouping() =>
        Prop.ForAll(
            Outcomes(),
            outcomes =>
            {
                double[] x = Enumerable.Range(0, outcomes.Length).Select(i => Math.Log(0.2 + 0.05 * i)).ToArray();
                double[] one = outcomes.Select(_ => 1.0).ToArray(),
                    two = outcomes.Select(_ => 2.0).ToArray();
                double[] y = outcomes.Select(o => o ? 1.0 : 0).ToArray(),
                    yy = y.Select(v => 2 * v).ToArray();
                BinomialGroup[] single = BinomialGroup.Of(x, one, y);
                BinomialFit fit = BinomialRegression.Fit([.. single, .. single.Reverse()], penalised: true);
                BinomialFit grouped = BinomialRegression.Fit(BinomialGroup.Of(x, two, yy), penalised: true);
                return fit.Coefficients.All(double.IsFinite)
                    && (fit.Coefficients - grouped.Coefficients).AbsoluteMaximum()
                        < 1e-5 * (1 + fit.Coefficients.AbsoluteMaximum());
            }
        );

    [Fact]
    public void ImpossibleDataAreRefused()
    {
        Assert.Throws<ArgumentException>(() => BinomialRegression.Fit([]));
        Assert.Throws<ArgumentException>(() => BinomialRegression.Fit(BinomialGroup.Of([1, 2], [1, 1], [2, 0])));
        Assert.Throws<ArgumentException>(() => BinomialRegression.Fit(BinomialGroup.Of([2, 2], [1, 1], [1, 0])));
        Assert.Throws<ArgumentException>(() => BinomialRegression.Fit(Beetles, Link.Probit, penalised: true));
        Assert.Throws<ArgumentException>(() => BinomialRegression.Fit([new([1, 2], 1, 0), new([1], 1, 0)]));
    }

    internal static BinomialGroup[] Budworm() =>
        [
            .. Enumerable.Range(0, 6).Select(i => new BinomialGroup([1, 0, i], 20, Female[i])),
            .. Enumerable.Range(0, 6).Select(i => new BinomialGroup([0, 1, i], 20, Male[i])),
        ];

    internal static BinomialGroup[] BeetleData => Beetles;

    internal static BinomialGroup[] RotenoneData => Rotenone;

    internal static void Near(double expected, double actual, double tolerance = 2e-8) =>
        Assert.Equal(0, actual / expected - 1, tolerance);

    private static Arbitrary<bool[]> Outcomes() =>
        Gen.Elements(true, false).ArrayOf(10).Where(o => o.Distinct().Count() == 2).ToArbitrary();
}
