namespace CalibGeom.Light;

/// <summary>
/// The standard normal distribution, from convergent series, so that geometry needs no numerics package.
/// </summary>
internal static class NormalLaw
{
    private const double SeriesLimit = 2.5;

    /// <summary>The complementary error function, to about 1e-15 of its value (1e-12 around 2.5).</summary>
    internal static double Erfc(double x)
    {
        if (x < 0)
            return 2 - Erfc(-x);
        return x < SeriesLimit ? 1 - ErfSeries(x) : ErfcFraction(x);
    }

    /// <summary>The probability of a value below z.</summary>
    internal static double Cumulative(double z) => Erfc(-z / Math.Sqrt(2)) / 2;

    /// <summary>The density at z.</summary>
    internal static double Density(double z) => Math.Exp(-z * z / 2) / Math.Sqrt(2 * Math.PI);

    /// <summary>The z below which a value lies with probability p, 0 &lt; p &lt; 1.</summary>
    internal static double Quantile(double p)
    {
        if (p > 0.5)
            return -Quantile(1 - p);
        double z = Start(p);
        for (int step = 0; step < 4; step++)
        {
            double error = (Cumulative(z) - p) / Density(z);
            z -= error / (1 + z * error / 2);
        }
        return z;
    }

    // erf x = 2/sqrt(pi) exp(-x^2) sum 2^n x^(2n+1) / (1 3 5 ... (2n+1)): all terms positive, nothing cancels.
    private static double ErfSeries(double x)
    {
        double term = x,
            sum = x;
        for (int n = 1; term > sum * 1e-17; n++)
        {
            term *= 2 * x * x / (2 * n + 1);
            sum += term;
        }
        return 2 / Math.Sqrt(Math.PI) * Math.Exp(-x * x) * sum;
    }

    // Laplace's continued fraction, from the inside out.
    private static double ErfcFraction(double x)
    {
        double tail = x;
        for (int k = 60; k >= 1; k--)
            tail = x + k / 2.0 / tail;
        return Math.Exp(-x * x) / (Math.Sqrt(Math.PI) * tail);
    }

    // Abramowitz and Stegun 26.2.23 with p at most one half: within 4.5e-4, refined by the caller.
    private static double Start(double p)
    {
        double t = Math.Sqrt(-2 * Math.Log(p));
        double top = 2.515517 + t * (0.802853 + t * 0.010328);
        double bottom = 1 + t * (1.432788 + t * (0.189269 + t * 0.001308));
        return -(t - top / bottom);
    }
}
