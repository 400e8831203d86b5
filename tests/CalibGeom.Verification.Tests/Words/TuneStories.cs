using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Tests.Tuning;
using CalibGeom.Verification.Tuning;
using CalibGeom.Verification.Tuning.Policy;

namespace CalibGeom.Verification.Tests.Words;

/// <summary>One print, or a few.</summary>
internal static class TuneStories
{
    private static readonly Trial Good = Make.Trial(2.5, 1.5, 0.0) with
    {
        Columns = Make.Columns(0.3),
        Slots = Make.Slots(6),
    };

    private static readonly Trial Tight = Grown(0.03);
    private static readonly Trial Loose = Grown(-0.03);

    internal static IEnumerable<Story> All =>
        [
            Of("on target", Good),
            Of("on target, twice", Good, Good),
            Of("tight", Tight),
            Of("tight, twice", Tight, Tight),
            Of("loose", Loose),
            Of("loose, twice", Loose, Loose),
            Of("cannot be told", Good with { GrowthX = new GrowthReading(0.01, 0.03), GrowthY = null }),
            Of(
                "too little light, few columns",
                Make.Trial(1.2, 1, -0.03) with
                {
                    Columns = Make.Columns(0.7),
                    Slots = Make.Slots(8),
                }
            ),
            Of("too much light", Make.Trial(6, 1, 0.06) with { Columns = Make.Columns(0), Slots = Make.Slots(1) }),
            Of("no column left, no box read", Good with { GrowthX = null, GrowthY = null, Columns = Make.Columns(9) }),
            Of("all slots closed", Good with { Slots = Make.Slots(0) }),
            Of("columns and comb alone", Good with { GrowthX = null, GrowthY = null, Joints = [] }),
            Of(
                "felt alone",
                Good with
                {
                    GrowthX = null,
                    GrowthY = null,
                    Joints =
                    [
                        new JointOutcome("joint1", 0.05, FeltFit.Binds),
                        new JointOutcome("joint2", 0.05, FeltFit.Slides),
                    ],
                }
            ),
            Of("axes differ", Make.Trial(2.5, 1.5, 0, difference: 0.05), Make.Trial(2.5, 1.5, 0, difference: 0.05)),
            Of(
                "columns lost later",
                Good with
                {
                    Columns = [.. Make.Columns(0).Select(c => Stood(c, ColumnStage.Plate))],
                }
            ),
            Of(
                "a thick column lost among thin ones",
                Good with
                {
                    Columns = [.. Make.Columns(0.3).Select(c => c.Diameter == 0.71 ? Stood(c, ColumnStage.Lost) : c)],
                }
            ),
            Of("the light changed", Good with { Slots = Make.Slots(2) }, Good with { Slots = Make.Slots(7) }),
            Of("repeats differ", Good, Grown(0.06)),
            Of("scale is off", Scaled(), Scaled(), Scaled()),
            Of(
                "a caliper with a bias",
                Good with
                {
                    GrowthX = new GrowthReading(0, 0.002, 0.0115),
                    GrowthY = new GrowthReading(0, 0.002, 0.0115),
                    Instrument = "cal",
                }
            ),
            Of("a cold vat", With(Good, 20), With(Good, 20)),
            Of("temperatures apart", With(Good, 22), With(Good, 29)),
            Of("a temperature known once", With(Good, 25), Good),
            Of(
                "another resin before",
                new Trial(Good.Settings, Make.Conditions(resin: "Demo blue")) { Slots = Make.Slots(5) },
                Good
            ),
            With("a wanted column", new TuneOptions { WantedColumn = 0.25 }, Good),
            With("no offset", new TuneOptions { OffsetAllowed = false }, Tight),
            With("whole pixels", new TuneOptions { Pixel = new PerAxis(0.05, 0.05) }, Tight),
            With("light held", new TuneOptions { Hold = Held.Time }, Tight),
            With("rest held", new TuneOptions { Hold = Held.Rest }, Tight),
            With("offset held", new TuneOptions { Hold = Held.Offset }, Tight),
            With("a quoted curve", new TuneOptions { Quoted = new QuotedLight(0.12, 4, 4) }, Tight),
            With("resin of a known modulus", new TuneOptions { Modulus = 30 }, Good),
        ];

    private static Story Of(string name, params Trial[] prints) => With(name, TuneOptions.Default, prints);

    private static Story With(string name, TuneOptions options, params Trial[] prints) =>
        new(name, Tuner.Run(prints, options).Findings);

    private static Trial Grown(double growth) =>
        Good with
        {
            GrowthX = new GrowthReading(growth, 0.002),
            GrowthY = new GrowthReading(growth, 0.002),
        };

    private static ColumnOutcome Stood(ColumnOutcome column, ColumnStage stage) =>
        new(column.Diameter, stage, column.Id, column.HeadDiameter);

    private static Trial Scaled() =>
        Good with
        {
            ScaleX = new ScaleReading(-0.004, 0.0003),
            ScaleY = new ScaleReading(0.0001, 0.0003),
        };

    private static Trial With(Trial print, double vat) =>
        new(print.Settings, new TrialConditions(0.05, "Demo grey", "bench", temperatureStart: vat, temperatureEnd: vat))
        {
            GrowthX = print.GrowthX,
            GrowthY = print.GrowthY,
            Joints = print.Joints,
            Columns = print.Columns,
            Slots = print.Slots,
        };
}
