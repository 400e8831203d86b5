using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Tests.Uncertainty;
using CalibGeom.Verification.Trends;
using CalibGeom.Verification.Trends.Changes;
using CalibGeom.Verification.Uncertainty;
using Xunit.Abstractions;

namespace CalibGeom.Verification.Tests.Trends;

/// <summary>
/// Simulated shops. Short here, one shop a row; CALIBGEOM_RUNS=2000 counts the whole table, CALIBGEOM_ROWS=a,b only
/// rows whose names contain these words, CALIBGEOM_SEED=100001 shops of other seeds; CALIBGEOM_TABLE=FILE adds each row
/// to a file as soon as it is counted.
/// </summary>
public class ShopTableTests(ITestOutputHelper output)
{
    private static int Runs(int otherwise) =>
        int.TryParse(Environment.GetEnvironmentVariable("CALIBGEOM_RUNS"), out int runs) ? runs : otherwise;

    private static Func<double, double> Falling(double share) => weeks => Math.Max(0, weeks) * Math.Log(1 - share);

    private static Func<double, double> Step(double share) => weeks => weeks > 0 ? Math.Log(1 - share) : 0;

    private static ShopRow Row(string name, Func<double, double> light, int runs) =>
        new(name, seed => new Shop(seed) { Change = light }, runs, corrects: false);

    [Fact]
    public void SteadyShopsAreLeftAlone()
    {
        ShopRow steady = Row("steady", _ => 0, Runs(40));
        output.WriteLine(steady.ToString());
        // 40 shops of up to 30 coupons: some 20 false alarms would be the stated rate; half as many more is two
        // standard deviations, and the seeds are fixed.
        Assert.True(steady.PerFalseAlarm > TrendOptions.Default.RunLength / 1.5, steady.ToString());
    }

    [Fact]
    public void FallingLightIsNoticed()
    {
        ShopRow row = Row("falls 4 % a coupon", Falling(0.04), Runs(40));
        output.WriteLine(row.ToString());
        Assert.True(row.Detected > 0.8, row.ToString());
        Assert.True(row.Verdict <= 15, row.ToString());
        Assert.True(row.Verdict <= row.Individuals, row.ToString());
        Assert.True(row.Cusum <= row.Individuals, row.ToString());
        Assert.True(row.Ewma <= row.Individuals, row.ToString());
        // A bridge read once knows ln(light) better than the growth of two axes, by what is believed of both; so many
        // shops that the medians are those of the whole table.
        ShopRow slow = Row("falls 2 % a coupon", Falling(0.02), Runs(80));
        output.WriteLine(slow.ToString());
        Assert.True(slow.Through < slow.Growth, slow.ToString());
    }

    [Fact]
    public void TheWholeTable()
    {
        string[] wanted = (Environment.GetEnvironmentVariable("CALIBGEOM_ROWS") ?? "").Split(',');
        output.WriteLine(ShopRow.Head);
        foreach ((string name, Func<ulong, Shop> shop) in Rows())
            if (wanted.Any(w => name.Contains(w, StringComparison.Ordinal)))
            {
                string row = new ShopRow(name, shop, Runs(1)).ToString();
                output.WriteLine(row);
                if (Environment.GetEnvironmentVariable("CALIBGEOM_TABLE") is { Length: > 0 } file)
                    File.AppendAllText(file, row + "\n");
                Assert.Equal(ShopRow.Head.Split('\n')[0].Count(c => c == '|'), row.Count(c => c == '|'));
                Assert.DoesNotContain("NaN", row, StringComparison.Ordinal);
            }
    }

    [Fact]
    public void OnePrefixIsReadLikeItsOwnLog()
    {
        foreach (ulong seed in new ulong[] { 3, 8 })
        {
            var shop = new Shop(seed) { Change = Falling(0.04), OtherCaliperFrom = 15 };
            IReadOnlyList<TrendPoint> points = TrendLog
                .Of(shop.Print().Select((t, i) => new LogEntry(i + 1, t, false)))
                .Current.Points;
            var all = new ChangeModel(points, shop.Options);
            int told = 0;
            for (int last = Shop.UsualOnset + 2; last < points.Count; last += 5)
            {
                TrendResult own = Trend.Run([.. points.Take(last + 1)], shop.Options);
                Near.Relative(own.Evidence[^1], Trend.Run(points, shop.Options).Evidence[last], 1e-6);
                if (own.Change is not { } change)
                    continue;
                told++;
                var reader = new ChangeReader(all, shop.Options, last);
                Near.Absolute(change.LightProbability, reader.LightProbability, 1e-6);
                Amount light = reader.LogLight();
                Near.Absolute(change.LogLight.Low, light.Low, 1e-6);
                Near.Absolute(change.LogLight.High, light.High, 1e-6);
                Near.Absolute(change.Correction!.Probability, reader.Correction()!.Probability, 1e-6);
            }
            Assert.True(told > 0);
        }
    }

    private static IEnumerable<(string, Func<ulong, Shop>)> Rows()
    {
        yield return ("steady", s => new Shop(s));
        foreach (double share in new[] { 0.005, 0.01, 0.02, 0.04 })
            yield return (
                FormattableString.Invariant($"falls {100 * share} % a coupon"),
                s => new Shop(s) { Change = Falling(share) }
            );
        foreach (double share in new[] { 0.05, 0.10, 0.30 })
            yield return (
                FormattableString.Invariant($"step of {100 * share} %"),
                s => new Shop(s) { Change = Step(share) }
            );
        yield return ("as believed", AsBelieved);
        foreach (double share in new[] { 0.02, 0.04 })
            yield return (
                FormattableString.Invariant($"calibrated, falls {100 * share} %"),
                s => new Shop(s) { Calibrated = true, Change = Falling(share) }
            );
        yield return ("calibrated, step of 30 %", s => new Shop(s) { Calibrated = true, Change = Step(0.3) });
        yield return ("seasons of +-4 K", s => new Shop(s) { Vat = n => 25 + 4 * Math.Sin(2 * Math.PI * n / 52) });
        yield return ("another caliper", s => new Shop(s) { OtherCaliperFrom = 15 });
        yield return ("another caliper, falls 4 %", s => new Shop(s) { OtherCaliperFrom = 15, Change = Falling(0.04) });
        yield return ("shared bias of 0.02 mm", s => new Shop(s) { SharedBias = 0.02 });
        yield return ("missing faces", s => new Shop(s) { Missing = 0.4 });
        yield return ("missing faces, falls 4 %", s => new Shop(s) { Missing = 0.4, Change = Falling(0.04) });
        yield return ("no bridge", s => new Shop(s) { Bridge = false });
        yield return ("no bridge, falls 4 %", s => new Shop(s) { Bridge = false, Change = Falling(0.04) });
        foreach (bool fine in new[] { false, true })
        {
            string comb = fine ? "fine comb" : "comb";
            yield return ($"{comb} instead of bridge", s => WithComb(s, fine, false, _ => 0));
            yield return ($"{comb} instead of bridge, falls 4 %", s => WithComb(s, fine, false, Falling(0.04)));
            yield return (
                $"calibrated, {comb} instead of bridge, falls 4 %",
                s => WithComb(s, fine, true, Falling(0.04))
            );
        }
        yield return ("by feel", s => new Shop(s) { ByFeel = true, Bridge = false });
        yield return (
            "by feel, falls 4 %",
            s => new Shop(s)
            {
                ByFeel = true,
                Bridge = false,
                Change = Falling(0.04),
            }
        );
    }

    // What trend takes changes for before any coupon: 85 of 100 drift, from any coupon on, by sizes of three scales;
    // drawn again where the light would not stay between a quarter and four times of what it was.
    private static Shop AsBelieved(ulong seed)
    {
        var random = new SeededRandom(seed + 1_000_000);
        while (true)
        {
            bool drifts = random.Uniform() < 0.85;
            int scale = (int)(3 * random.Uniform());
            double size = (drifts ? new[] { 0.015, 0.06, 0.2 } : [0.1, 0.3, 1.0])[scale] * random.Normal();
            var shop = new Shop(seed)
            {
                Onset = 2 + (int)((Shop.Coupons - 2) * random.Uniform()),
                Change = weeks =>
                    drifts ? Math.Max(0, weeks) * size
                    : weeks > 0 ? size
                    : 0,
            };
            if (Math.Abs(shop.Light(Shop.Coupons - 1)) < Math.Log(4))
                return shop;
        }
    }

    private static Shop WithComb(ulong seed, bool fine, bool calibrated, Func<double, double> light) =>
        new(seed)
        {
            Bridge = false,
            Comb = true,
            FineComb = fine,
            Calibrated = calibrated,
            Change = light,
        };
}
