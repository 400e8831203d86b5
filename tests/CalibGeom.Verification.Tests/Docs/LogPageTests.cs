using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;
using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Tuning;

namespace CalibGeom.Verification.Tests.Docs;

/// <summary>The lines of docs/log.md that add a print from a program of one's own.</summary>
public sealed class LogPageTests : IDisposable
{
    private readonly string log = Path.GetTempFileName();
    private readonly FeatureTable features = TestObject.Of(Presets.Standard).Features;

    public void Dispose() => File.Delete(log);

    private static ReadingSet Print(double width) =>
        ReadingsFile.Parse(
            FormattableString.Invariant(
                $"# state washed\n# material rigid\nfeature,value\nbox1.outside.x,{width}\nbox2.inside.x,8.09\ncolumn2.stood,cure\ncolumn5.stood,cure\n"
            ),
            "print.csv"
        );

    [Fact]
    public void APrintIsAddedAndTheNextAskedFor()
    {
        ReadingSet readings = Print(8.02);

        // begin
        var said = new TrialEntry
        {
            Time = 2.5,
            Rest = 0.5,
            Resin = "Demo grey",
        };
        LogEntry added = TrialLog.Append(
            log,
            before =>
            {
                var made = NewTrial.Of(before, said, features, readings);
                return made.Doubts.Count == 0 ? made.Trial : throw new InputException(made.Doubts[0].Message);
            }
        );
        NextStep next = Tuner.Run(TrialLog.Read(log).Trials).Next;
        // end

        Assert.Equal((1, 2.5, "Demo grey"), (added.Number, added.Trial.Settings.Time, added.Trial.Conditions.Resin));
        Assert.Equal(NextKind.Change, next.Kind);
        DocExample.RequireOn("docs/log.md");
    }

    /// <summary>A second print takes over what nobody says; its doubts and findings stand beside the trial.</summary>
    [Fact]
    public void WhatStandsBesideATrialComesWithIt()
    {
        var first = new TrialEntry
        {
            Time = 2.5,
            Rest = 0.5,
            BaseLayers = 4,
            Date = new DateOnly(2026, 3, 1),
        };
        TrialLog.Append(log, before => NewTrial.Of(before, first, features, Print(8.02)).Trial);
        var spot = new PlateSpot("B2", 10, 20, 90);
        var process = new ProcessFacts(Pixel: new PerAxis(0.05, 0.04));
        var made = NewTrial.Of(
            TrialLog.Read(log),
            new TrialEntry
            {
                Time = 25,
                HoursSince = 7,
                LayersSince = 300,
            },
            features,
            Print(8.02),
            process,
            spot
        );
        Assert.Equal(new ExposureSettings(25, 0.5), made.Trial.Settings);
        Assert.Equal(
            (4, spot, 7.0, 300),
            (
                made.Trial.Cycle.BaseLayers,
                made.Trial.Place!,
                made.Trial.HoursSince!.Value,
                made.Trial.LayersSince!.Value
            )
        );
        Assert.Equal(new PerAxis(0.05, 0.04), made.Trial.Pixel);
        Assert.Null(made.Trial.Date);
        Assert.Equal(PartState.Washed, made.Trial.Conditions.State);
        Assert.Equal(["rest 0.5 s", "base layers 4"], made.Taken);
        Assert.Equal([TrialDoubts.SameReadings, "unlikely-setting"], made.Doubts.Select(d => d.Rule));
        Assert.Equal(["still-wet", "instrument-undeclared", "burr-or-growth"], made.Findings.Select(f => f.Rule));
    }
}
