using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Trends;

namespace CalibGeom.Verification.Tests.Words;

/// <summary>Coupons a week apart.</summary>
internal static class TrendStories
{
    private static readonly TrialConditions Conditions = Vat(25);

    private static TrialConditions Vat(double degrees) => new(0.05, "Demo grey", "bench", temperatureStart: degrees);

    internal static IEnumerable<Story> All =>
        [
            Of("one coupon", 0.01),
            Of("two coupons, far apart", 0.01, -0.03),
            Of("steady", Steady(12)),
            Of("falls slowly", [.. Enumerable.Range(0, 10).Select(i => 0.01 - 0.001 * i)]),
            Of("falls out of its tolerance", [.. Enumerable.Range(0, 12).Select(i => 0.01 - 0.004 * i)]),
            Of("rises", [.. Enumerable.Range(0, 12).Select(i => 0.01 + 0.004 * i)]),
            Of("a step that may be chance", [.. Enumerable.Repeat(0.01, 6), .. Enumerable.Repeat(0.001, 4)]),
            Of("a large step", [.. Enumerable.Repeat(0.01, 6), .. Enumerable.Repeat(-0.03, 6)]),
            Of("scatters", [.. Enumerable.Range(0, 12).Select(i => i % 2 == 0 ? 0.03 : -0.03)]),
            Told("steady, in combs alone", Steady(10), p => p with { GrowthX = null, GrowthY = null }),
            Told(
                "a step, in combs alone",
                [.. Enumerable.Repeat(0.01, 6), .. Enumerable.Repeat(-0.03, 6)],
                p => p with { GrowthX = null, GrowthY = null }
            ),
            Told("without combs", Steady(10), p => p with { Slots = null }),
            Told(
                "in words alone",
                [.. Enumerable.Repeat(0.01, 6), .. Enumerable.Repeat(-0.03, 6)],
                p =>
                    p with
                    {
                        Slots = null,
                        GrowthX = null,
                        GrowthY = null,
                        Joints =
                        [
                            new JointOutcome("joint1", 0.05, p.GrowthX!.Value > 0 ? FeltFit.Slides : FeltFit.Rattles),
                        ],
                    }
            ),
            Told("used for months", Steady(28), p => p with { HoursSince = 10 }),
            Told("layers counted", Steady(28), p => p with { LayersSince = 2000 }),
            Told("without dates", Steady(6), p => p with { Date = null }),
            Told("a cold vat", Steady(6), p => With(p, Vat(20))),
            Last("another layer height", p => With(p, new TrialConditions(0.03, "Demo grey", "bench"))),
            Last("another resin", p => With(p, new TrialConditions(0.05, "Demo blue", "bench"))),
            Last("another bottle", p => With(p, Conditions with { Bottle = "2" })),
            Last("another film", p => With(p, Conditions with { Film = "b" })),
            Last("another screen", p => With(p, Conditions with { Screen = "b" })),
            Last("a warmer vat", p => With(p, Vat(29))),
            Last("another caliper", p => p with { Instrument = "new" }),
            Last("an older date", p => p with { Date = new DateOnly(2025, 12, 1) }),
            Of(
                "nothing that tells light",
                new Trial[] { Print(0.01, 0) with { GrowthX = null, GrowthY = null, Slots = null } }
            ),
        ];

    private static double[] Steady(int coupons) =>
        [.. Enumerable.Range(0, coupons).Select(i => 0.01 + 0.002 * (i % 3))];

    private static Story Of(string name, params double[] growths) => Told(name, growths, p => p);

    private static Story Told(string name, double[] growths, Func<Trial, Trial> told) =>
        Of(name, [.. growths.Select((g, i) => told(Print(g, i)))]);

    private static Story Last(string name, Func<Trial, Trial> changed)
    {
        Trial[] prints = [.. Steady(8).Select(Print)];
        prints[^1] = changed(prints[^1]);
        return Of(name, prints);
    }

    private static Story Of(string name, Trial[] prints)
    {
        try
        {
            return new(name, TrendAnswer.Of(prints.Select((p, i) => new LogEntry(i + 1, p, false))).Findings);
        }
        catch (InputException e)
        {
            return new(name, [new Finding("refused", Severity.Error, e.Id, e.Message, "")]);
        }
    }

    private static Trial With(Trial print, TrialConditions conditions) =>
        new(print.Settings, conditions)
        {
            Date = print.Date,
            Instrument = print.Instrument,
            GrowthX = print.GrowthX,
            GrowthY = print.GrowthY,
            Slots = print.Slots,
        };

    private static Trial Print(double growth, int week) =>
        new(new ExposureSettings(2.5, 1), Conditions)
        {
            Date = new DateOnly(2026, 1, 10).AddDays(7 * week),
            Instrument = "cal",
            GrowthX = new GrowthReading(growth + 0.001, 0.002, 0.0115),
            GrowthY = new GrowthReading(growth - 0.001, 0.002, 0.0115),
            Slots = new SlotOutcome(SlotOutcome.StandardHeights, growth > -0.01 ? 5 : 7),
        };
}
