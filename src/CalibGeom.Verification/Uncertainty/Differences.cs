namespace CalibGeom.Verification.Uncertainty;

/// <summary>
/// Derivatives of a model at its inputs by central differences in steps of a fraction of their uncertainties.
/// </summary>
internal static class Differences
{
    private const double Step = 0.1;

    internal static double At(Func<double[], double> model, InputQuantity[] inputs) =>
        Finite(model(inputs.Select(q => q.Value).ToArray()));

    /// <summary>
    /// First derivatives, Richardson-extrapolated; 0 for an input without uncertainty, which does not matter.
    /// </summary>
    internal static double[] Gradient(Func<double[], double> model, InputQuantity[] inputs)
    {
        double[] x = inputs.Select(q => q.Value).ToArray();
        return inputs
            .Select((q, i) => q.StandardUncertainty == 0 ? 0 : First(model, x, i, Step * q.StandardUncertainty))
            .ToArray();
    }

    /// <summary>Sum over i and j of (f_ij^2 / 2 + f_i f_ijj) u_i^2 u_j^2.</summary>
    internal static double SecondOrderVariance(Func<double[], double> model, InputQuantity[] inputs)
    {
        double[] x = inputs.Select(q => q.Value).ToArray();
        double[] u = inputs.Select(q => q.StandardUncertainty).ToArray();
        double[] gradient = Gradient(model, inputs);
        double sum = 0;
        for (int i = 0; i < u.Length; i++)
        for (int j = 0; j < u.Length; j++)
        {
            if (u[i] == 0 || u[j] == 0)
                continue;
            double h = Step * u[j];
            double up = Moved(x, j, h, y => Central(model, y, i, Step * u[i]));
            double down = Moved(x, j, -h, y => Central(model, y, i, Step * u[i]));
            double mixed = (up - down) / (2 * h);
            double third = (up - 2 * Central(model, x, i, Step * u[i]) + down) / (h * h);
            sum += (mixed * mixed / 2 + gradient[i] * third) * u[i] * u[i] * u[j] * u[j];
        }
        return sum;
    }

    private static double First(Func<double[], double> model, double[] x, int i, double h) =>
        (4 * Central(model, x, i, h / 2) - Central(model, x, i, h)) / 3;

    private static double Central(Func<double[], double> model, double[] x, int i, double h)
    {
        double before = x[i],
            high = before + h,
            low = before - h;
        double up = Moved(x, i, h, y => Finite(model(y))),
            down = Moved(x, i, -h, y => Finite(model(y)));
        return (up - down) / (high - low);
    }

    private static double Moved(double[] x, int i, double h, Func<double[], double> use)
    {
        double[] moved = (double[])x.Clone();
        moved[i] += h;
        return use(moved);
    }

    private static double Finite(double value) =>
        double.IsFinite(value)
            ? value
            : throw new ArithmeticException("The model gave a value that is not finite at or near its inputs.");
}
