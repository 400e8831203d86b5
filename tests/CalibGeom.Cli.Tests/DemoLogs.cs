using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Cli.Tests;

/// <summary>Logs of the demo workshop: a witness coupon a week, and a plate with coupons all over.</summary>
internal static class DemoLogs
{
    private static readonly ExposureSettings Settings = new(2.5, 1);
    private static readonly TrialConditions Conditions = new(0.05, "Demo grey", "bench");

    /// <summary>A calibration at six exposures, and then 24 coupons of <see cref="Witness"/>.</summary>
    internal static string Watched(double share)
    {
        var random = new SeededRandom(9);
        double[] exposures = [1.6, 4, 2, 3.2, 1.8, 3.6];
        return string.Concat(
                exposures.Select(
                    (time, i) =>
                        Line(time, new DateOnly(2026, 2, 20).AddDays(i), Math.Log(time / Settings.Time), random)
                )
            ) + Witness(share, 24);
    }

    /// <summary>Coupons whose light falls by a share each from the sixth on.</summary>
    internal static string Witness(double share, int count = 16)
    {
        var random = new SeededRandom(4);
        return string.Concat(
            Enumerable
                .Range(0, count)
                .Select(i =>
                    Line(
                        Settings.Time,
                        new DateOnly(2026, 3, 2).AddDays(7 * i),
                        i < 5 ? 0 : (i - 4) * Math.Log(1 - share),
                        random
                    )
                )
        );
    }

    private static string Line(double time, DateOnly date, double light, SeededRandom random)
    {
        double growth = 0.015 + 0.025 * light + 0.004 * random.Normal(),
            through = 0.33 + 0.12 * light + 0.008 * random.Normal();
        return TrialLog.ToLine(
                new Trial(new ExposureSettings(time, 1), Conditions)
                {
                    Date = date,
                    Digest = "0123456789abcdef",
                    Instrument = "cal",
                    GrowthX = Read(growth + 0.001, random),
                    GrowthY = Read(growth - 0.001, random),
                    Slots = new SlotOutcome(
                        SlotOutcome.StandardHeights,
                        SlotOutcome.StandardHeights.Count(h => h > through)
                    ),
                }
            ) + "\n";
    }

    /// <summary>Five coupons of one print; the light falls from the front left to the back right by a share.</summary>
    internal static string Plate(double share)
    {
        var random = new SeededRandom(6);
        (string Label, double X, double Y)[] places =
        [
            ("A1", -55, -30),
            ("A2", 55, -30),
            ("A3", 0, 0),
            ("A4", -55, 30),
            ("A5", 55, 30),
        ];
        return string.Concat(
            places.Select(p =>
            {
                double light = Math.Log(1 - share) * ((p.X / 75 + p.Y / 45) / 4 + 0.5),
                    growth = 0.018 + 0.035 * light;
                return TrialLog.ToLine(
                        new Trial(Settings, Conditions)
                        {
                            Date = new DateOnly(2026, 3, 2),
                            Instrument = "cal",
                            Place = new PlateSpot(p.Label, p.X, p.Y),
                            GrowthX = Read(growth, random),
                            GrowthY = Read(growth, random),
                            Readings = new Dictionary<string, IReadOnlyList<double>>
                            {
                                ["plinth.thickness"] = [Math.Round(2.5 + 0.004 * random.Normal(), 2)],
                            },
                        }
                    ) + "\n";
            })
        );
    }

    private static GrowthReading Read(double growth, SeededRandom random) =>
        new(Math.Round(growth + 0.0025 * random.Normal(), 4), 0.0025, 0.0115);
}
