using System.Globalization;

namespace CalibGeom.Verification.Clearances;

/// <content>Joints of one's own.</content>
public sealed partial class ClearancePrediction
{
    /// <summary>Predicts a peg and a hole of one's own.</summary>
    /// <param name="peg">Designed size of the peg, over 0 and at most 500 mm.</param>
    /// <param name="hole">Designed size of the hole, within 5 mm of the peg.</param>
    /// <param name="wanted">Wanted clearance per side, -1 to 2 mm; null for the designed one.</param>
    /// <exception cref="ArgumentException">A value is out of range.</exception>
    public OwnJoint For(double peg, double hole, double? wanted = null)
    {
        if (!(peg > 0 && peg <= 500))
            throw Bad(nameof(peg), peg, "it is over 0 and at most 500 mm");
        if (!(hole > 0 && Math.Abs(hole - peg) <= 5))
            throw Bad(nameof(hole), hole, "it is over 0 and within 5 mm of the peg");
        double want = wanted ?? (hole - peg) / 2;
        if (!(want is >= -1 and <= 2))
            throw Bad(nameof(wanted), want, "it runs from -1 to 2 mm");
        Knowledge all = Copy();
        int[] quantities = fit.Axes.Select(a => all.Add(fit.System.Predict(OwnTarget(peg, hole, a)))).ToArray();
        OwnJointAxis[] axes = fit.Axes.Select((a, i) => OwnAxis(all, peg, hole, want, a, quantities[i])).ToArray();
        double scale = 1 + Axes.Average(a => a.Scale.Value),
            growth = Axes.Average(a => a.Growth.Value);
        double sum = SumFor(want, scale, growth);
        return new OwnJoint(
            peg,
            hole,
            axes,
            all.AllPositive(quantities),
            all.Fits(quantities),
            IsoFitsOf(all, quantities, peg),
            want,
            peg + sum,
            hole - sum
        );
    }

    private LinearTarget OwnTarget(double peg, double hole, string axis) =>
        fit.Clearance(OwnFace("peg", peg, false, axis), OwnFace("hole", hole, true, axis), (fit.Reprint(axis), -2));

    // What the hole must be larger than the peg by design.
    private static double SumFor(double wanted, double scale, double growth) => 2 * (wanted + 2 * growth) / scale;

    private OwnJointAxis OwnAxis(Knowledge all, double peg, double hole, double wanted, string axis, int quantity)
    {
        AxisEstimate own = Axes.Single(a => a.Axis == axis);
        double sum = SumFor(wanted, 1 + own.Scale.Value, own.Growth.Value);
        Estimate pegSize = all.Of(
            all.Add(fit.System.Predict(fit.Size(OwnFace("peg", peg, false, axis), (fit.Reprint(axis), 2))))
        );
        Estimate holeSize = all.Of(
            all.Add(fit.System.Predict(fit.Size(OwnFace("hole", hole, true, axis), (fit.Reprint(axis), -2))))
        );
        return new OwnJointAxis(
            axis,
            all.Of(quantity),
            pegSize,
            holeSize,
            Iso286.GradeOf(peg, pegSize.Value - peg),
            Iso286.GradeOf(hole, holeSize.Value - hole),
            peg + sum,
            hole - sum
        );
    }

    private static Face OwnFace(string what, double nominal, bool inside, string axis) =>
        new(FeatureId.Of("own", null, FormattableString.Invariant($"{what}.{nominal}"), axis), nominal, inside, axis);

    private static (string Fit, double Probability)[] IsoFitsOf(Knowledge all, int[] quantities, double nominal) =>
        nominal > 50
            ? []
            : Iso286
                .Fits.Select(f =>
                {
                    (double least, double most) = f.Clearance(nominal);
                    return (f.Name, Probability: all.AllBetween(quantities, least / 2000, most / 2000));
                })
                .OrderByDescending(f => f.Probability)
                .ToArray();

    private static ArgumentException Bad(string name, double value, string limit) =>
        new(string.Create(CultureInfo.InvariantCulture, $"{name} is {value}; {limit}."), name);
}
