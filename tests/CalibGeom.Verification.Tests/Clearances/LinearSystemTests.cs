using CalibGeom.Verification.Clearances;
using CalibGeom.Verification.Tests.Uncertainty;
using CalibGeom.Verification.Uncertainty;
using FsCheck.Xunit;
using MathNet.Numerics.LinearAlgebra;

namespace CalibGeom.Verification.Tests.Clearances;

/// <summary>Solving in parts gives what the dense formulas give.</summary>
public class LinearSystemTests
{
    private const double Floor = 1e-6;

    private readonly record struct Row(double Value, double[] Coefficients, (int Source, double Factor)[] Errors);

    private readonly List<double> u = [];
    private readonly List<Row> rows = [];

    /// <summary>Rows as benches have them: one source of their own, some of few rows, some of many.</summary>
    private LinearSystem Bench(SeededRandom random, int count, int coefficients)
    {
        rows.Clear();
        u.Clear();
        int Number(int below) => (int)(random.Uniform() * below);
        int groups = 1 + Number(1 + count / 2),
            wide = Number(7);
        for (int k = 0; k < count + groups + wide; k++)
            u.Add(k >= count && random.Uniform() < 0.1 ? 0 : Math.Pow(10, -1 - 1.5 * random.Uniform()));
        for (int i = 0; i < count; i++)
        {
            var errors = new List<(int, double)> { (i, 1), (count + Number(groups), random.Normal()) };
            for (int k = 0; k < wide; k++)
                if (random.Uniform() < 0.6)
                    errors.Add((count + groups + k, random.Normal()));
            rows.Add(
                new Row(
                    0.1 * random.Normal(),
                    [.. Enumerable.Range(0, coefficients).Select(j => j == 0 ? 1 : random.Normal())],
                    [.. errors]
                )
            );
        }
        var system = new LinearSystem(coefficients);
        for (int k = 0; k < u.Count; k++)
            system.Source($"source{k}", "error", u[k], InputShape.Normal);
        foreach (Row row in rows)
            system.Add(row.Value, row.Coefficients, row.Errors);
        system.Solve();
        return system;
    }

    [Property(MaxTest = 60)]
    public void PartsGiveWhatTheDenseFormulasGive(ushort seed, byte size)
    {
        var random = new SeededRandom(seed);
        int p = 1 + size % 4,
            n = p + 2 + size % 60;
        LinearSystem system = Bench(random, n, p);
        Matrix<double> x = Matrix<double>.Build.Dense(n, p, (i, j) => rows[i].Coefficients[j]),
            a = Matrix<double>.Build.Dense(n, u.Count),
            d = Matrix<double>.Build.DenseOfDiagonalArray([.. u.Select(v => v * v)]);
        for (int i = 0; i < n; i++)
            foreach ((int k, double f) in rows[i].Errors)
                a[i, k] += f;
        Vector<double> y = Vector<double>.Build.DenseOfEnumerable(rows.Select(r => r.Value));
        Matrix<double> v = a * d * a.Transpose() + Floor * Floor * Matrix<double>.Build.DenseIdentity(n),
            w = v.Inverse(),
            c = (x.Transpose() * w * x).Inverse(),
            q = w - w * x * c * x.Transpose() * w;
        Vector<double> b = c * x.Transpose() * w * y,
            left = y - x * b;
        const double Close = 1e-9;
        for (int j = 0; j < p; j++)
        {
            Near.Relative(b[j], system.Coefficient(j), Close);
            Near.Relative(Math.Sqrt(c[j, j]), system.CoefficientUncertainty(j), Close);
        }
        Near.Relative(left * w * left, system.ChiSquare, Close);
        (double Distance, double U)[] deleted = system.Deleted();
        (double Residual, double U)[] residuals = [.. system.Residuals()];
        Vector<double> qy = w * left;
        Matrix<double> spread = v - x * c * x.Transpose();
        for (int i = 0; i < n; i++)
        {
            Near.Absolute(left[i], residuals[i].Residual, 1e-9);
            Near.Absolute(Math.Max(0, spread[i, i]), residuals[i].U * residuals[i].U, 1e-12);
            if (q[i, i] < 1e-3 * w[i, i])
                continue;
            Near.Relative(1 / Math.Sqrt(q[i, i]), deleted[i].U, Close);
            Near.Absolute(qy[i] / q[i, i], deleted[i].Distance, Close);
        }
        // A quantity with a coefficient and errors that rows share: Henderson's predictor.
        double[] wanted = [.. Enumerable.Range(0, p).Select(_ => random.Normal())];
        (int, double)[] realised = [(n, 1), (u.Count - 1, -0.5)];
        Vector<double> k0 = Vector<double>.Build.Dense(u.Count);
        foreach ((int k, double f) in realised)
            k0[k] += f;
        Vector<double> gain = w * (a * (d * k0)),
            part = Vector<double>.Build.DenseOfArray(wanted) - x.Transpose() * gain,
            weights = gain + w * x * c * part,
            factors = a.Transpose() * weights - k0;
        LinearEstimate e = system.Predict(new LinearTarget(0.3, wanted, realised));
        Near.Absolute(0.3 + Vector<double>.Build.DenseOfArray(wanted) * b + gain * left, e.Value, 1e-9);
        for (int k = 0; k < u.Count; k++)
            Near.Absolute(factors[k] * u[k], e.Factors[k] * u[k], 1e-9);
    }

    [Property(MaxTest = 60)]
    public void RowsOfWhichNothingIsKnownSayNothing(ushort seed, byte size)
    {
        var random = new SeededRandom(seed);
        int faces = 2 + size % 20,
            gauges = 1 + size % 7;
        double Squares(double form)
        {
            var again = new SeededRandom(seed);
            var system = new LinearSystem(2);
            int jaw = system.Source("jaw", "jaw", 0.0115, InputShape.Rectangular);
            for (int i = 0; i < faces + gauges; i++)
            {
                int own = system.Source($"own{i}", "own", i < faces ? form : 0.008, InputShape.Normal);
                system.Add(0.03 * again.Normal(), i < faces ? [1, i % 5] : [0, 0], (own, 1), (jaw, 1));
            }
            system.Solve();
            return system.ChiSquare;
        }
        // Of gauges that share a jaw's bias: by the inverse of s^2 I + b^2 11' (Sherman and Morrison, 1950).
        double[] all = [.. Enumerable.Range(0, faces + gauges).Select(_ => 0.03 * random.Normal())],
            read = all[faces..];
        double s = 0.008 * 0.008 + Floor * Floor,
            bias = 0.0115 * 0.0115,
            sum = read.Sum(),
            alone = read.Sum(r => r * r) / s - bias * sum * sum / (s * (s + gauges * bias));
        // The faces themselves leave up to 20 times 0.03^2 / 1e3^2.
        Near.Absolute(alone, Squares(1e3), 1e-7);
    }
}
