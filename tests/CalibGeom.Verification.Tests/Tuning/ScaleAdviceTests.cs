using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Tuning;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace CalibGeom.Verification.Tests.Tuning;

public class ScaleAdviceTests
{
    [Property(MaxTest = 60)]
    public Property WhatWasTypedIsTakenOffWhatWasRead() =>
        Prop.ForAll(
            Gen.Choose(-50, 50).ToArbitrary(),
            Gen.Choose(-40, 40).ToArbitrary(),
            (process, typed) =>
            {
                double s = process / 10000.0,
                    factor = 1 + typed / 10000.0;
                Trial Printed(double entered) =>
                    Make.Trial(2, 1, 0) with
                    {
                        Scale = new SlicerScale(entered),
                        ScaleX = new ScaleReading((1 + s) * entered - 1, 0.0004),
                    };
                ScaleAdvice told = Tuner.Run([Printed(1), Printed(factor)]).ScaleX!;
                return Math.Abs(told.Change - s) < 1e-12
                    && told.Told == (Math.Abs(s) > 3 * 0.0004)
                    && told.ToType == (told.Told ? Math.Round(1 / (1 + s), 4) : 1);
            }
        );

    [Fact]
    public void ScaleIsAmongTheNumbersToTypeWhereItDiffersBeyondDoubt()
    {
        TuningResult Said(double s) => Tuner.Run([Make.Trial(2, 1, 0) with { ScaleX = new ScaleReading(s, 0.0004) }]);
        TuningResult shrunk = Said(-0.003),
            doubtful = Said(-0.001);
        Assert.Equal("100.30 % (1.0030)", shrunk.ToType.Lines.Single(l => l.Key == "scale X").Value);
        Assert.Contains(
            "0.30 +- 0.08 % too small",
            shrunk.Findings.Single(f => f.Rule == "scale").Message,
            StringComparison.Ordinal
        );
        Assert.DoesNotContain(doubtful.ToType.Lines, l => l.Key.StartsWith("scale", StringComparison.Ordinal));
        Assert.DoesNotContain(doubtful.Findings, f => f.Rule == "scale");
        Assert.Null(doubtful.ScaleY);
    }

    [Fact]
    public void ImpossibleScalesAreRefused()
    {
        Assert.Throws<ArgumentException>(() => new SlicerScale(2));
        Assert.Throws<ArgumentException>(() => new SlicerScale(1, double.NaN));
        Assert.Throws<ArgumentException>(() => new ScaleReading(0.5, 0.001));
        Assert.Throws<ArgumentException>(() => new ScaleReading(0, 0));
    }
}
