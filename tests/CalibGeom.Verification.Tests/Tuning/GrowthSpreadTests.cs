using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Tests.Uncertainty;
using CalibGeom.Verification.Tuning;
using CalibGeom.Verification.Uncertainty;
using FsCheck.Xunit;
using MathNet.Numerics.LinearAlgebra;

namespace CalibGeom.Verification.Tests.Tuning;

/// <summary>Working with the covariance of measured growths in parts gives what the whole matrix gives.</summary>
public class GrowthSpreadTests
{
    [Property(MaxTest = 60)]
    public void PartsGiveWhatTheWholeMatrixGives(ushort seed, byte size)
    {
        var random = new SeededRandom(seed);
        double Between() => Math.Pow(10, -2 - random.Uniform());
        GrowthReading? Growth() =>
            random.Uniform() < 0.8 ? new GrowthReading(0.02 * random.Normal(), Between(), Between()) : null;
        Trial[] trials =
        [
            .. Enumerable
                .Range(0, 1 + size % 40)
                .Select(i => new Trial(new ExposureSettings(1 + (int)(6 * random.Uniform()), 1, 0), Make.Conditions())
                {
                    Instrument = $"caliper {(int)(3 * random.Uniform())}",
                    GrowthX = Growth(),
                    GrowthY = Growth(),
                }),
        ];
        var latents = new GrowthLatents(trials, ExposurePriors.Default);
        int n = latents.Readings.Count;
        if (n == 0)
            return;
        double between = Between();
        Matrix<double> v = Matrix<double>.Build.Dense(n, n, (i, j) => Covariance(latents, trials, between, i, j));
        Vector<double> x = Vector<double>.Build.Dense(n, _ => random.Normal());
        Vector<double> expected = v.Cholesky().Solve(x);
        var spread = new GrowthSpread(latents, between);
        double[] solved = spread.Solve([.. x]);
        for (int i = 0; i < n; i++)
            Near.Absolute(expected[i], solved[i], 1e-9 * expected.AbsoluteMaximum());
        Near.Relative(x * expected, spread.SquaredLength([.. x]), 1e-9);
        Near.Absolute(v.Cholesky().DeterminantLn / 2, spread.LogDiagonal, 1e-9 * n);
    }

    /// <summary>
    /// A log may say of its readings that they are as precise as it likes. X and Y of one print, both the same: what
    /// both share is known, so that x' C^-1 x is 1 / (bias^2 + misfit^2 + between^2) in the limit (their difference
    /// being 0).
    /// </summary>
    [Theory]
    [InlineData(1e-5)]
    [InlineData(1e-9)]
    [InlineData(1e-170)]
    public void ReadingsMayBeAsPreciseAsTheyLike(double uncertainty)
    {
        var reading = new GrowthReading(0.02, uncertainty, 0.005);
        Trial trial = new(new ExposureSettings(2.5, 1, 0), Make.Conditions()) { GrowthX = reading, GrowthY = reading };
        const double between = 0.004;
        double misfit = ExposurePriors.Default.LackOfFit,
            shared = 0.005 * 0.005 + misfit * misfit + between * between;
        var spread = new GrowthSpread(new GrowthLatents([trial], ExposurePriors.Default), between);
        Near.Relative(1 / shared, spread.SquaredLength([1, 1]), 1e-4);
        GrowthPrediction told = ExposureResponse.Of([trial]).At(trial.Settings);
        Assert.InRange(told.Mean, 0.01, 0.03);
    }

    // What the readings i and j share, written out from what the model says of them.
    private static double Covariance(GrowthLatents latents, Trial[] trials, double between, int i, int j)
    {
        ExposurePriors priors = ExposurePriors.Default;
        Trial one = trials[latents.Readings[i].Print],
            other = trials[latents.Readings[j].Print];
        double sum =
            latents.Readings[i].Share * latents.Readings[j].Share * priors.AxisDifference * priors.AxisDifference;
        if (one.Instrument == other.Instrument)
        {
            double bias = trials
                .Where(t => t.Instrument == one.Instrument)
                .Max(t => Math.Max(t.GrowthX?.Bias ?? 0, t.GrowthY?.Bias ?? 0));
            sum += bias * bias;
        }
        if (one.Settings.SameProcess(other.Settings))
            sum += priors.LackOfFit * priors.LackOfFit;
        if (ReferenceEquals(one, other))
            sum += between * between;
        return i == j ? sum + latents.Readings[i].Uncertainty * latents.Readings[i].Uncertainty : sum;
    }
}
