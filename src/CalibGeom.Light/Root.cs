namespace CalibGeom.Light;

/// <summary>
/// Roots of a monotone function. Our own beside MathNet's Brent, whose one tolerance is held against the function's
/// value too: here it is a length alone, whatever the unit of the function.
/// </summary>
internal static class Root
{
    /// <summary>
    /// The place between low and high where a continuous function changes sign (Illinois variant of the false
    /// position), to a tolerance if one is given.
    /// </summary>
    internal static double Between(Func<double, double> function, double low, double high, double within = 0)
    {
        double atLow = function(low),
            atHigh = function(high);
        if (atLow == 0)
            return low;
        if (atHigh == 0)
            return high;
        double tolerance = Math.Max(within, 1e-15 * Math.Max(Math.Abs(low), Math.Abs(high)));
        for (int step = 0; step < 200 && Math.Abs(high - low) > tolerance; step++)
        {
            double middle = step % 3 == 2 ? (low + high) / 2 : high - atHigh * (high - low) / (atHigh - atLow);
            double at = function(middle);
            if (at == 0)
                return middle;
            if (Math.Sign(at) == Math.Sign(atHigh))
                atLow /= 2;
            else
                (low, atLow) = (high, atHigh);
            (high, atHigh) = (middle, at);
        }
        return (low + high) / 2;
    }
}
