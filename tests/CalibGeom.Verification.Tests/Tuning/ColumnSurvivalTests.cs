using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Tuning;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace CalibGeom.Verification.Tests.Tuning;

public class ColumnSurvivalTests
{
    [Property(MaxTest = 30)]
    public Property ACleanCutIsBracketed() =>
        Prop.ForAll(
            Gen.Choose(30, 70).ToArbitrary(),
            n =>
            {
                double cut = n / 100.0;
                Trial trial = With(2, Make.Columns(cut));
                double lost = trial.Columns.Where(c => !c.Printed).Max(c => c.Diameter),
                    stood = trial.Columns.Where(c => c.Printed).Min(c => c.Diameter);
                ColumnLimit limit = ColumnSurvival.Of([trial])!.Limit(2);
                return limit.Diameter > lost * 0.94
                    && limit.Diameter < stood * 1.06
                    && limit.Low < limit.Diameter
                    && limit.High > limit.Diameter
                    && limit.High < stood * 1.5
                    && limit.Low > lost / 1.5;
            }
        );

    [Fact]
    public void MoreExposureLowersTheLimitAndTheDataSayByHowMuch()
    {
        ColumnSurvival one = ColumnSurvival.Of([With(2, Make.Columns(0.42))])!;
        Assert.Equal(0.35, one.TimeExponent, 0.02); // what is believed before: one print says nothing of it
        Assert.True(one.Limit(3).Diameter < one.Limit(2).Diameter);
        ColumnSurvival steep = ColumnSurvival.Of([With(2, Make.Columns(0.6)), With(4, Make.Columns(0.29))])!;
        Assert.InRange(steep.TimeExponent, 0.45, 1.1);
    }

    [Fact]
    public void WhatIsLostInWashOrCureIsHandling()
    {
        ColumnOutcome[] gentle = Make.Columns(0.4);
        ColumnOutcome[] rough = gentle
            .Select(c =>
                c.Printed && c.Diameter < 0.6
                    ? new ColumnOutcome(c.Diameter, ColumnStage.Plate, c.Id, c.HeadDiameter)
                    : c
            )
            .ToArray();
        ColumnSurvival a = ColumnSurvival.Of([With(2, gentle)])!,
            b = ColumnSurvival.Of([With(2, rough)])!;
        Assert.Equal(a.Limit(2), b.Limit(2));
        Assert.Equal(0, a.LostLater);
        Assert.True(b.LostLater > 0);
        Assert.Contains(Tuner.Run([With(2, rough)]).Findings, f => f.Rule == "lost-later");
    }

    [Fact]
    public void AThickColumnLostAmongStandingThinOnesIsAdhesion()
    {
        ColumnOutcome[] columns = Make.Columns(0)
            .Select((c, i) => i == 18 ? new ColumnOutcome(c.Diameter, ColumnStage.Lost, "column19", 1.6) : c)
            .ToArray();
        Assert.Equal("column19", ColumnSurvival.OutOfOrder(With(2, columns)).Single().Id);
        Assert.Empty(ColumnSurvival.OutOfOrder(With(2, Make.Columns(0.4))));
        ColumnOutcome[] thinLostToo = Make.Columns(0.4)
            .Select((c, i) => i == 18 ? new ColumnOutcome(c.Diameter, ColumnStage.Lost, "column19", 1.6) : c)
            .ToArray();
        Assert.Equal("column19", ColumnSurvival.OutOfOrder(With(2, thinLostToo)).Single().Id);
        Finding told = Tuner.Run([With(2, columns)]).Findings.Single(f => f.Rule == "out-of-order");
        Assert.Contains("adhesion, dirt", told.Remedy, StringComparison.Ordinal);
    }

    [Fact]
    public void AllStandingOrAllLostLeavesOneEndOpen()
    {
        ColumnLimit all = ColumnSurvival.Of([With(2, Make.Columns(0))])!.Limit(2),
            none = ColumnSurvival.Of([With(2, Make.Columns(9))])!.Limit(2);
        Assert.Equal((null, null), (all.Diameter, none.Diameter));
        Assert.Equal(0, all.Low);
        Assert.InRange(all.High, 0.2, 0.35);
        Assert.Equal(double.PositiveInfinity, none.High);
        Assert.InRange(none.Low, 0.6, 1);
        Assert.Null(ColumnSurvival.Of([With(2, [])]));
    }

    [Fact]
    public void ProbabilitiesRiseWithDiameterAndLieInTheirInterval()
    {
        ColumnSurvival survival = ColumnSurvival.Of([With(2, Make.Columns(0.42)), With(2.4, Make.Columns(0.38))])!;
        double before = 0;
        foreach (double d in new[] { 0.25, 0.35, 0.45, 0.6, 0.8 })
        {
            double p = survival.Probability(d, 2.4);
            (double low, double high) = (survival.ProbabilityInterval(d).Low, survival.ProbabilityInterval(d).High);
            Assert.True(p > before && low <= p && p <= high);
            before = p;
        }
    }

    // CHECKS.md 8.2, COMPUTED: E = 1000 MPa, L = 10 mm, F = 0.1 N.
    [Theory]
    [InlineData(0.3, 0.0003976078202, 0.009810579731, 377.2561614)]
    [InlineData(0.4, 0.001256637061, 0.03100627668, 159.1549431)]
    [InlineData(0.5, 0.003067961576, 0.07569891768, 81.48733086)]
    [InlineData(0.8, 0.02010619298, 0.4961004269, 19.89436789)]
    public void LoadsAreTheTextbooks(double d, double second, double buckling, double bending)
    {
        var loads = new ColumnLoads(d, 10, 1.6, 1000);
        Assert.Equal(1, loads.SecondMoment / second, 1e-9);
        Assert.Equal(1, loads.BucklingLoad / buckling, 1e-9);
        Assert.Equal(1, loads.BendingStress(0.1) / bending, 1e-9);
        Assert.Equal(0.05 * 1.6 * 1.6 / (d * d), loads.PeelStress(0.05), 1e-12);
    }

    [Fact]
    public void LoadsAreToldWhenAModulusIsGiven()
    {
        IEnumerable<Finding> Told(double? modulus) =>
            Tuner
                .Run([With(2, Make.Columns(0.4))], TuneOptions.Default with { Modulus = modulus })
                .Findings.Where(f => f.Rule == "column-loads");
        Assert.Empty(Told(null));
        Assert.Contains("buckles at", Told(1000).Single().Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => Told(0));
    }

    [Fact]
    public void DiametersAreToldInPlainWords()
    {
        ColumnSurvival survival = ColumnSurvival.Of([With(2, Make.Columns(0.42)), With(2, Make.Columns(0.38))])!;
        double nine = survival.DiameterFor(0.9, 2);
        Assert.Equal(0.9, survival.Probability(nine, 2), 1e-3);
        Assert.True(nine > survival.Limit(2).Diameter);
        Assert.Contains(
            FormattableString.Invariant($"columns from {nine:0.00} mm will print"),
            Tuner
                .Run(
                    [With(2, Make.Columns(0.42)), With(2, Make.Columns(0.38))],
                    TuneOptions.Default with
                    {
                        Hold = CalibGeom.Verification.Tuning.Policy.Held.Time,
                    }
                )
                .Findings.Single(f => f.Rule == "column-limit")
                .Message,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void ImpossibleColumnsAreRefused()
    {
        Assert.Throws<ArgumentException>(() => new ColumnLoads(0.4, 0, 1.6, 1000));
        Assert.Throws<ArgumentException>(() => new ColumnLoads(0.4, 10, 0.3, 1000));
        Assert.Throws<ArgumentException>(() => new ColumnOutcome(0, ColumnStage.Cure));
        Assert.Throws<ArgumentException>(() => new ColumnOutcome(0.4, (ColumnStage)9));
    }

    private static Trial With(double time, ColumnOutcome[] columns) =>
        new(new ExposureSettings(time), Make.Conditions()) { Columns = columns };
}
