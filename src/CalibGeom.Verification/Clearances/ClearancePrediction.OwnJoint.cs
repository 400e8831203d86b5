using System.Globalization;
using CalibGeom.Verification.Decisions;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Clearances;

/// <content>Joints of one's own.</content>
public sealed partial class ClearancePrediction
{
    /// <summary>Predicts a peg and a hole of one's own, as the next print would give them.</summary>
    /// <param name="peg">Designed size of the peg, over 0 and at most 500 mm.</param>
    /// <param name="hole">Designed size of the hole, within 5 mm of the peg.</param>
    /// <param name="wanted">Wanted clearance per side, -1 to 2 mm; null for the designed one.</param>
    /// <param name="limits">Between which clearances per side it must lie; null for those of the options.</param>
    /// <exception cref="ArgumentException">A value is out of range.</exception>
    public OwnJoint For(double peg, double hole, double? wanted = null, ToleranceLimits? limits = null)
    {
        if (!(peg > 0 && peg <= 500))
            throw Bad(nameof(peg), peg, "it is over 0 and at most 500 mm");
        if (!(hole > 0 && Math.Abs(hole - peg) <= 5))
            throw Bad(nameof(hole), hole, "it is over 0 and within 5 mm of the peg");
        double want = wanted ?? (hole - peg) / 2;
        if (!(want is >= -1 and <= 2))
            throw Bad(nameof(wanted), want, "it runs from -1 to 2 mm");
        var all = new Knowledge(options);
        Number(all);
        OwnFaces[] faces = fit.Axes.Select(a => OwnFaces.Of(fit, all, a, peg, hole)).ToArray();
        int[] quantities = faces.Select(f => f.Clearance).ToArray();
        OwnJointAxis[] own = faces.Select(f => OwnAxis(all, f, want, limits ?? options.Limits)).ToArray();
        double sum = SumFor(want, 1 + Axes.Average(a => a.Scale.Value), Axes.Average(a => a.NextGrowth.Value));
        Estimate middle = all.Of(
            quantities.Length == 1 ? quantities[0] : all.Add(all[quantities[0]].Combine(0.5, all[quantities[1]], 0.5))
        );
        return new OwnJoint
        {
            PegNominal = peg,
            HoleNominal = hole,
            Axes = own,
            ProbabilityEnters = all.AllPositive(quantities),
            Fits = all.Fits(quantities, null),
            IsoFits = IsoFitsOf(all, quantities, peg),
            Wanted = want,
            HoleForWanted = Across(peg + sum, middle),
            PegForWanted = Across(hole - sum, middle),
            Findings = NextPrintFindings.Of(Variation).ToArray(),
            Withheld = Withheld(),
        };
    }

    /// <summary>A size that is right when the clearance is: as uncertain as both sides of it together.</summary>
    private static Estimate Across(double size, Estimate clearance) =>
        new(
            size,
            2 * clearance.StandardUncertainty,
            clearance.DegreesOfFreedom,
            new Interval(size - 2 * clearance.Expanded, size + 2 * clearance.Expanded)
        );

    // What the hole must be larger than the peg by design.
    private static double SumFor(double wanted, double scale, double growth) => 2 * (wanted + 2 * growth) / scale;

    private OwnJointAxis OwnAxis(Knowledge all, OwnFaces faces, double wanted, ToleranceLimits? limits)
    {
        AxisEstimate own = Axes.Single(a => a.Axis == faces.Peg.Axis);
        double sum = SumFor(wanted, 1 + own.Scale.Value, own.NextGrowth.Value);
        Estimate clearance = all.Of(faces.Clearance),
            peg = all.Of(faces.PegSize),
            hole = all.Of(faces.HoleSize);
        return new OwnJointAxis
        {
            Axis = faces.Peg.Axis,
            Clearance = clearance,
            Peg = peg,
            Hole = hole,
            PegGrade = ToleranceGrade.Of(faces.Peg.Nominal, peg.Value - faces.Peg.Nominal, peg.Expanded),
            HoleGrade = ToleranceGrade.Of(faces.Hole.Nominal, hole.Value - faces.Hole.Nominal, hole.Expanded),
            HoleForWanted = Across(faces.Peg.Nominal + sum, clearance),
            PegForWanted = Across(faces.Hole.Nominal - sum, clearance),
            Decision = Decide(all, clearance, faces.Clearance, limits),
        };
    }

    private static IsoFitChance[] IsoFitsOf(Knowledge all, int[] quantities, double nominal) =>
        nominal > 50
            ? []
            : Iso286
                .Fits.Select(f =>
                {
                    Interval across = f.Clearance(nominal);
                    return new IsoFitChance(f.Name, all.AllBetween(quantities, across.Low / 2, across.High / 2));
                })
                .OrderByDescending(f => f.Probability)
                .ToArray();

    private static ArgumentException Bad(string name, double value, string limit) =>
        new(string.Create(CultureInfo.InvariantCulture, $"{name} is {value}; {limit}."), name);
}
