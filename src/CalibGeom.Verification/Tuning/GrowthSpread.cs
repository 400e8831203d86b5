using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Tuning;

/// <summary>
/// The covariance of measured growths around the formula, worked with as it is made of: the one or two readings of a
/// print share its deviation, prints of a setting its misfit, and all the biases of calipers and what X is more than Y
/// (Sherman and Morrison, 1950; Woodbury, 1950). So each answer takes a number of steps that grows with the number of
/// prints and not with its cube.
/// </summary>
internal sealed class GrowthSpread
{
    private readonly GrowthLatents latents;
    private readonly double between;
    private readonly double[] ofOne,
        settingShare;
    private readonly double[][] shared,
        solved;
    private readonly LowerRoot capacity;

    internal GrowthSpread(GrowthLatents latents, double betweenPrints)
    {
        this.latents = latents;
        between = betweenPrints * betweenPrints;
        double misfit = latents.MisfitDeviation * latents.MisfitDeviation;
        ofOne = new double[latents.Readings.Count];
        Array.Fill(ofOne, 1);
        double logs = Prints(ofOne);
        settingShare = new double[latents.Settings.Count];
        for (int j = 0; j < ofOne.Length; j++)
            settingShare[latents.SettingOf(j)] += ofOne[j];
        for (int s = 0; s < settingShare.Length; s++)
        {
            double whole = 1 + misfit * settingShare[s];
            logs += Math.Log(whole);
            settingShare[s] = misfit / whole;
        }
        shared = latents.Shared;
        solved = [.. shared.Select(Local)];
        var held = new double[shared.Length, shared.Length];
        for (int i = 0; i < shared.Length; i++)
        for (int k = 0; k <= i; k++)
            held[i, k] = (i == k ? 1 : 0) + Products.Dot(shared[i], solved[k]);
        capacity = new LowerRoot(held);
        LogDiagonal = logs / 2 + capacity.LogDiagonal;
    }

    /// <summary>Half the logarithm of the determinant.</summary>
    internal double LogDiagonal { get; }

    /// <summary>x' C^-1 x.</summary>
    internal double SquaredLength(double[] x) => Products.Dot(x, Solve(x));

    /// <summary>C^-1 x.</summary>
    internal double[] Solve(double[] x)
    {
        double[] local = Local(x),
            along = capacity.Solve([.. shared.Select(g => Products.Dot(g, local))]);
        for (int k = 0; k < along.Length; k++)
        for (int j = 0; j < local.Length; j++)
            local[j] -= solved[k][j] * along[k];
        return local;
    }

    /// <summary>Without what all prints share.</summary>
    private double[] Local(double[] x)
    {
        double[] w = (double[])x.Clone();
        Prints(w);
        var sums = new double[settingShare.Length];
        for (int j = 0; j < w.Length; j++)
            sums[latents.SettingOf(j)] += w[j];
        for (int j = 0; j < w.Length; j++)
            w[j] -= ofOne[j] * settingShare[latents.SettingOf(j)] * sums[latents.SettingOf(j)];
        return w;
    }

    /// <summary>
    /// Each print by itself, in place; written so that what its two readings share does not cancel where they are
    /// precise. Returns the logarithm of the determinant.
    /// </summary>
    private double Prints(double[] w)
    {
        double logs = 0;
        for (int j = 0; j < w.Length; j++)
        {
            double u = latents.Readings[j].Uncertainty,
                own = u * u;
            if (j + 1 < w.Length && latents.Readings[j + 1].Print == latents.Readings[j].Print)
            {
                double v = latents.Readings[j + 1].Uncertainty,
                    other = v * v,
                    whole = own * other + between * (own + other),
                    apart = between * (w[j] - w[j + 1]);
                (w[j], w[j + 1]) = ((other * w[j] + apart) / whole, (own * w[j + 1] - apart) / whole);
                logs += Math.Log(whole);
                j++;
            }
            else
            {
                w[j] /= own + between;
                logs += Math.Log(own + between);
            }
        }
        return logs;
    }
}
