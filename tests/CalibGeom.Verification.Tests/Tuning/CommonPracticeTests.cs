using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Tuning;
using CalibGeom.Verification.Tuning.Policy;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Tests.Tuning;

/// <summary>
/// What the trade feels at the bench. Common practice, no source. Each is shown beside priors that would contradict it.
/// </summary>
public class CommonPracticeTests
{
    // Blurred edges alone, and hardly any rest: 4 micrometres of clearance for 0.2 s at 1.8 s.
    private static readonly ExposurePriors Blunt = ExposurePriors.Default with
    {
        TimeEffect = new LogNormalPrior(0.018, 0.2),
        RestEffect = new LogNormalPrior(0.0005, 0.2),
    };

    [Fact]
    public void MoreRestAndMoreExposureLieOnOneCurve()
    {
        // At layers of 30 micrometres: 1.3 s without rest, 1.8 s with 2.5 s of rest.
        CurvePoint At(ExposurePriors priors)
        {
            var print = new Trial(new ExposureSettings(1.3), Make.Conditions(0.03))
            {
                GrowthX = new GrowthReading(0, 0.002),
                GrowthY = new GrowthReading(0, 0.002),
                Joints = [new JointOutcome("joint1", 0.05)],
            };
            TuneOptions options = TuneOptions.Default with { Priors = priors, Hold = Held.Offset };
            return Tuner.Run([print], options).Curve.Single(p => p.Rest == 2.5);
        }
        CurvePoint believed = At(ExposurePriors.Default),
            blunt = At(Blunt);
        Assert.InRange(1.8, believed.Low, believed.High);
        // And not only because the interval holds anything: by the middle it lies nearer 1.8 than 1.3 s.
        Assert.True(Math.Abs(Math.Log(believed.Time / 1.8)) < Math.Abs(Math.Log(believed.Time / 1.3)));
        Assert.True(Math.Abs(Math.Log(blunt.Time / 1.8)) > Math.Abs(Math.Log(blunt.Time / 1.3)));
    }

    [Fact]
    public void ThreeTenthsOfASecondTooLittleAreFeltAsLooseAndToldSo()
    {
        // On the steep side of what is believed (b 0.08 mm), 1.8 s twice on target, then 1.5 s twice.
        const double b = 0.08;
        Trial Printed(double time)
        {
            double growth = b * Math.Log(time / 1.8),
                clearance = 0.05 - 2 * growth;
            FeltFit felt = Enum.GetValues<FeltFit>().MaxBy(f => FitThresholds.Default.Probability(f, clearance));
            return Make.Trial(time, 2, growth) with
            {
                Columns = Make.Columns(0),
                Joints = [new JointOutcome("joint1", 0.05, felt)],
            };
        }
        Assert.Equal(FeltFit.Slides, Printed(1.8).Joints[0].Fit);
        Assert.Equal(FeltFit.Rattles, Printed(1.5).Joints[0].Fit);
        Finding told = Tuner.Run([Printed(1.8), Printed(1.8), Printed(1.5), Printed(1.5)]).Findings[1];
        Assert.Equal("loose", told.Rule);
        Assert.Contains("although every column stands", told.Message, StringComparison.Ordinal);
        double seconds = double.Parse(
            System
                .Text.RegularExpressions.Regex.Match(told.Message, @"about (\d\.\d) s of light too little")
                .Groups[1]
                .Value,
            System.Globalization.CultureInfo.InvariantCulture
        );
        Assert.InRange(seconds, 0.2, 0.5);
    }

    [Fact]
    public void StepsOfATenthOfASecondCanBeFelt()
    {
        // A clearance that moves by 5 micrometres moves one word of fit in twenty; the trade says 0.2 s at 1.8 s do.
        double Moves(ExposurePriors priors, double seconds, double share) =>
            2
            * ExposureResponse
                .Of([], priors, 1.8)
                .ChangeInterval(new ExposureSettings(1.8), new ExposureSettings(1.8 + seconds), share)
                .High;
        // The middle of what is believed, and one side of its 90 %.
        Assert.True(Moves(ExposurePriors.Default, 0.2, 0.01) > 0.005);
        Assert.True(Moves(ExposurePriors.Default, 0.1, 0.9) > 0.010);
        Assert.True(Moves(Blunt, 0.2, 0.01) < 0.005 && Moves(Blunt, 0.1, 0.9) < 0.010);
    }
}
