namespace CalibGeom.Verification.Uncertainty;

/// <summary>Products of plain arrays.</summary>
internal static class Products
{
    /// <summary>The scalar product of two vectors of one length.</summary>
    internal static double Dot(double[] a, double[] b)
    {
        double sum = 0;
        for (int i = 0; i < a.Length; i++)
            sum += a[i] * b[i];
        return sum;
    }
}
