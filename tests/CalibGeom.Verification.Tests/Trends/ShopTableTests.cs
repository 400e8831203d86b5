using CalibGeom.Verification.Trends;
using Xunit.Abstractions;

namespace CalibGeom.Verification.Tests.Trends;

/// <summary>
/// Simulated shops. Short here; CALIBGEOM_RUNS=2000 writes the whole table, and CALIBGEOM_ROWS=a,b only rows whose
/// names contain these words.
/// </summary>
public class ShopTableTests(ITestOutputHelper output)
{
    private static int Runs(int otherwise) =>
        int.TryParse(Environment.GetEnvironmentVariable("CALIBGEOM_RUNS"), out int runs) ? runs : otherwise;

    private static Func<int, double> Falling(double share) =>
        n => n < Shop.Onset ? 0 : (n - Shop.Onset + 1) * Math.Log(1 - share);

    private static Func<int, double> Step(double share) => n => n < Shop.Onset ? 0 : Math.Log(1 - share);

    private static ShopRow Row(string name, Func<int, double> light, int runs) =>
        new(name, seed => new Shop(seed) { Light = light }, light, runs);

    [Fact]
    public void SteadyShopsAreLeftAlone()
    {
        ShopRow steady = Row("steady", _ => 0, Runs(40));
        output.WriteLine(steady.ToString());
        // 40 shops of up to 30 coupons: some 20 false alarms would be the stated rate; half as many more is two
        // standard
        // deviations, and the seeds are fixed.
        Assert.True(steady.PerFalseAlarm > TrendOptions.Default.RunLength / 1.5, steady.ToString());
    }

    [Fact]
    public void FallingLightIsNoticed()
    {
        ShopRow row = Row("falls 4 % a coupon", Falling(0.04), Runs(16));
        output.WriteLine(row.ToString());
        Assert.True(row.Detected > 0.8, row.ToString());
        Assert.True(row.Verdict <= 15, row.ToString());
        Assert.True(row.Verdict <= row.Individuals, row.ToString());
        Assert.True(row.Cusum <= row.Individuals, row.ToString());
        Assert.True(row.Ewma <= row.Individuals, row.ToString());
    }

    [Fact]
    public void TheWholeTable()
    {
        if (Environment.GetEnvironmentVariable("CALIBGEOM_RUNS") is null)
        {
            // The other tests of this class hold the short form.
            Assert.Equal(12, ShopRow.Head.Split('\n')[1].Count(c => c == '|') - 2);
            return;
        }
        string[] wanted = (Environment.GetEnvironmentVariable("CALIBGEOM_ROWS") ?? "").Split(',');
        output.WriteLine(ShopRow.Head);
        foreach ((string name, Func<ulong, Shop> shop, Func<int, double> light) in Rows())
            if (wanted.Any(w => name.Contains(w, StringComparison.Ordinal)))
                output.WriteLine(new ShopRow(name, shop, light, Runs(0)).ToString());
    }

    private static IEnumerable<(string, Func<ulong, Shop>, Func<int, double>)> Rows()
    {
        Func<int, double> none = _ => 0;
        yield return ("steady", s => new Shop(s), none);
        foreach (double share in new[] { 0.005, 0.01, 0.02, 0.04 })
            yield return (
                FormattableString.Invariant($"falls {100 * share} % a coupon"),
                s => new Shop(s) { Light = Falling(share) },
                Falling(share)
            );
        foreach (double share in new[] { 0.05, 0.10, 0.30 })
            yield return (
                FormattableString.Invariant($"step of {100 * share} %"),
                s => new Shop(s) { Light = Step(share) },
                Step(share)
            );
        foreach (double share in new[] { 0.02, 0.04 })
            yield return (
                FormattableString.Invariant($"calibrated, falls {100 * share} %"),
                s => new Shop(s) { Calibrated = true, Light = Falling(share) },
                Falling(share)
            );
        yield return ("calibrated, step of 30 %", s => new Shop(s) { Calibrated = true, Light = Step(0.3) }, Step(0.3));
        yield return (
            "fine comb, falls 4 %",
            s => new Shop(s)
            {
                Calibrated = true,
                FineComb = true,
                Light = Falling(0.04),
            },
            Falling(0.04)
        );
        yield return ("fine comb", s => new Shop(s) { FineComb = true }, none);
        yield return (
            "seasons of +-4 K",
            s => new Shop(s) { Vat = n => 25 + 4 * Math.Sin(2 * Math.PI * n / 52) },
            none
        );
        yield return ("another caliper", s => new Shop(s) { OtherCaliperFrom = 15 }, none);
        yield return (
            "another caliper, falls 4 %",
            s => new Shop(s) { OtherCaliperFrom = 15, Light = Falling(0.04) },
            Falling(0.04)
        );
        yield return ("shared bias of 0.02 mm", s => new Shop(s) { SharedBias = 0.02 }, none);
        yield return ("missing faces", s => new Shop(s) { Missing = 0.4 }, none);
        yield return (
            "missing faces, falls 4 %",
            s => new Shop(s) { Missing = 0.4, Light = Falling(0.04) },
            Falling(0.04)
        );
        yield return ("no comb", s => new Shop(s) { Comb = false }, none);
        yield return ("no comb, falls 4 %", s => new Shop(s) { Comb = false, Light = Falling(0.04) }, Falling(0.04));
        yield return ("by feel", s => new Shop(s) { ByFeel = true, Comb = false }, none);
        yield return (
            "by feel, falls 4 %",
            s => new Shop(s)
            {
                ByFeel = true,
                Comb = false,
                Light = Falling(0.04),
            },
            Falling(0.04)
        );
    }
}
