namespace CalibGeom.Verification.Trends.Changes;

/// <summary>
/// One way in which a series may have changed: a step before coupon <see cref="From"/>, or a drift from the time of
/// coupon <see cref="From"/> on; with the sums that the filter gives for it up to every coupon.
/// </summary>
internal sealed class ChangeCase
{
    private readonly double[][] squares,
        products;

    internal ChangeCase(CouponFilter filter, double[] times, double spacing, bool drifts, int from)
    {
        Drifts = drifts;
        From = from;
        Course = times
            .Select(
                (t, n) =>
                    drifts ? Math.Max(0, (t - times[from]) / spacing)
                    : n >= from ? 1.0
                    : 0
            )
            .ToArray();
        double[][][] moved = Enum.GetValues<Gauge>()
            .Select(g => filter.Whiten((n, i) => filter.Points[n].Values[i].Gauge == g ? Course[n] : 0))
            .ToArray();
        squares = new double[times.Length][];
        products = new double[times.Length][];
        var square = new double[9];
        var product = new double[3];
        for (int n = 0; n < times.Length; n++)
        {
            for (int i = 0; i < filter.Observed[n].Length; i++)
            for (int g = 0; g < 3; g++)
            {
                product[g] += moved[g][n][i] * filter.Observed[n][i];
                for (int h = 0; h < 3; h++)
                    square[3 * g + h] += moved[g][n][i] * moved[h][n][i];
            }
            squares[n] = (double[])square.Clone();
            products[n] = (double[])product.Clone();
        }
    }

    /// <summary>Whether it goes on, rather than being a step.</summary>
    internal bool Drifts { get; }

    /// <summary>The first coupon after a step, or the coupon at which a drift starts.</summary>
    internal int From { get; }

    /// <summary>By how many times its size every coupon is moved.</summary>
    internal double[] Course { get; }

    /// <summary>The least number of coupons that can know of it.</summary>
    internal int Needs => Drifts ? From + 2 : From + 1;

    /// <summary>The information on its size that the coupons up to one hold, for a cause.</summary>
    internal double Information(int last, double[] response)
    {
        double sum = 0;
        for (int g = 0; g < 3; g++)
        for (int h = 0; h < 3; h++)
            sum += response[g] * response[h] * squares[last][3 * g + h];
        return sum;
    }

    /// <summary>The size times that information, as observed.</summary>
    internal double Score(int last, double[] response)
    {
        double sum = 0;
        for (int g = 0; g < 3; g++)
            sum += response[g] * products[last][g];
        return sum;
    }
}
