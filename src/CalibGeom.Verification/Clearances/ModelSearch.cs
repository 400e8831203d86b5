using CalibGeom.Verification.Uncertainty;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.RootFinding;

namespace CalibGeom.Verification.Clearances;

/// <summary>
/// A fit that survives readings it was not made for: gross errors are left out one by one while that alone mends it;
/// otherwise the form error is raised until chi-square is as likely larger as smaller, and further the worse the misfit
/// (after Paule and Mandel, J. Res. NBS 87 (1982) 377; the Birge ratio with the excess put where it arises).
/// </summary>
internal sealed class ModelSearch
{
    /// <summary>Chance of calling a good face a gross error, over all faces of a print.</summary>
    private const double FalseAlarm = 0.05;

    /// <summary>At most this share of the faces may be gross errors.</summary>
    private const double MostAside = 0.25;

    /// <summary>At most so many, each of which takes a fit: more are no slips of single readings.</summary>
    private const int MostFacesAside = 100;

    /// <summary>The form error is raised when chance alone gives the residuals with less than this.</summary>
    private const double RaiseBelow = 0.5;

    /// <summary>
    /// Up to what chance of the residuals form is raised: to the median where it hardly is, to this where chance gives
    /// them hardly ever. The misfit then is real, and form from so few residuals is as often too small as too large;
    /// bent walls need the larger (found on simulated benches).
    /// </summary>
    private const double RaisedFurthest = 0.95;

    /// <summary>The raised form is found to this, mm: far below what it is known to.</summary>
    private const double Fine = 2e-4;

    /// <summary>A form error, mm, with which faces say nothing and chi-square is that of the gauges alone.</summary>
    private const double Boundless = 1e3;

    /// <summary>Form is not looked for beyond this, mm.</summary>
    private const double LargestForm = 0.5;

    private ModelSearch(ModelFit fit, ModelCheck check, IReadOnlyList<GrossFace> gross)
    {
        Fit = fit;
        Check = check;
        Gross = gross;
    }

    internal ModelFit Fit { get; }

    internal ModelCheck Check { get; }

    /// <summary>What was left out, with how far it lay off when it was.</summary>
    internal IReadOnlyList<GrossFace> Gross { get; }

    internal static ModelSearch Of(
        IReadOnlyList<MatchedReadings> prints,
        PredictionOptions options,
        CancellationToken cancellation = default
    )
    {
        PrintVariation variation = Learn(prints, options, cancellation);
        ModelFit plain = ModelFit.Of(prints, options, new FitSettings(options.FormError, variation), cancellation);
        (ModelFit fit, IReadOnlyList<GrossFace> gross) = options.Robust
            ? WithoutGross(prints, options, plain, cancellation)
            : (plain, []);
        // Several faces out and the rest still does not fit: then it is the form that was taken too small.
        if (gross.Count > 1 && Chance(fit) < ModelCheck.Least)
            (fit, gross) = (plain, []);
        // Gauges that disagree with what was assumed of the instrument are no matter of form: faces given the gauges.
        int gauges = prints.Sum(p => p.References.Count),
            freedom = fit.System.DegreesOfFreedom - gauges;
        double ofGauges = gauges > 0
                ? WithForm(prints, options, fit, Boundless, cancellation: cancellation).System.ChiSquare
                : 0,
            chi = fit.System.ChiSquare - ofGauges,
            probability = freedom > 0 ? 1 - ChiSquared.CDF(freedom, Math.Max(0, chi)) : 1;
        bool raise = options.Robust && freedom > 0 && probability < RaiseBelow;
        ModelFit final = raise ? Raised(prints, options, fit, freedom, ofGauges, probability, cancellation) : fit;
        var check = new ModelCheck
        {
            ChiSquare = freedom > 0 ? Math.Max(0, chi) : 0,
            DegreesOfFreedom = Math.Max(0, freedom),
            Probability = probability,
            FormError = final.Settings.Form,
            Raised = raise,
        };
        return new ModelSearch(final, check, gross);
    }

    private static double Chance(ModelFit fit) =>
        fit.System.DegreesOfFreedom > 0 ? 1 - ChiSquared.CDF(fit.System.DegreesOfFreedom, fit.System.ChiSquare) : 1;

    private static (ModelFit Fit, IReadOnlyList<GrossFace> Gross) WithoutGross(
        IReadOnlyList<MatchedReadings> prints,
        PredictionOptions options,
        ModelFit fit,
        CancellationToken cancellation
    )
    {
        var gross = new List<GrossFace>();
        int most = Math.Min(MostFacesAside, (int)(MostAside * fit.Faces.Count));
        while (gross.Count < most && Worst(fit) is { } worst)
        {
            gross.Add(worst);
            FitSettings next = fit.Settings with { Aside = gross.Select(g => g.Face.Group).ToArray() };
            fit = ModelFit.Of(prints, options, next, cancellation);
        }
        return (fit, gross);
    }

    private static GrossFace? Worst(ModelFit fit)
    {
        if (fit.System.DegreesOfFreedom < 2)
            return null;
        (double Distance, double U)[] deleted = fit.System.Deleted();
        int worst = Enumerable.Range(0, fit.Faces.Count).MaxBy(i => Math.Abs(deleted[i].Distance) / deleted[i].U);
        (double distance, double u) = deleted[worst];
        double freedom = fit.Scatter[fit.Faces[worst].Group.Instrument.Name].Freedom;
        double chance = Math.Min(1, fit.Faces.Count * Coverage.TwoSidedProbability(distance, u, freedom));
        return chance < FalseAlarm ? new GrossFace(fit.Faces[worst], distance, u, chance) : null;
    }

    private static ModelFit Raised(
        IReadOnlyList<MatchedReadings> prints,
        PredictionOptions options,
        ModelFit fit,
        int freedom,
        double ofGauges,
        double probability,
        CancellationToken cancellation
    )
    {
        double upTo = RaisedFurthest - (RaisedFurthest - RaiseBelow) * probability / RaiseBelow;
        double middle = ChiSquared.InvCDF(freedom, 1 - upTo);
        ModelFit With(double form) => WithForm(prints, options, fit, form, freedom, cancellation);
        double Excess(double form) => Math.Log(Math.Max(1e-9, With(form).System.ChiSquare - ofGauges) / middle);
        double high = Math.Max(2 * options.FormError, 0.01);
        while (Excess(high) > 0 && high < LargestForm)
            high *= 2;
        return Brent.TryFindRoot(Excess, options.FormError, high, Fine, 20, out double root) ? With(root) : With(high);
    }

    private static ModelFit WithForm(
        IReadOnlyList<MatchedReadings> prints,
        PredictionOptions options,
        ModelFit fit,
        double form,
        double freedom = double.PositiveInfinity,
        CancellationToken cancellation = default
    ) => ModelFit.Of(prints, options, fit.Settings with { Form = form, FormFreedom = freedom }, cancellation);

    /// <summary>Growth of each print by itself, and how much of it is the print's own.</summary>
    private static PrintVariation Learn(
        IReadOnlyList<MatchedReadings> prints,
        PredictionOptions options,
        CancellationToken cancellation
    )
    {
        if (prints.Count < 2 || options.BetweenPrints is not null)
            return PrintVariation.Assumed(options, prints.Count);
        bool same =
            prints
                .Select(p =>
                    string.Join('|', p.Sizes.Select(g => g.Instrument.Name).Distinct().Order(StringComparer.Ordinal))
                )
                .Distinct()
                .Count() == 1;
        ModelFit[] fits = prints.Select(p => ModelFit.Of([p], options, null, cancellation)).ToArray();
        var growths = fits.SelectMany(f => f.Axes.Select(a => (Axis: a, Estimate: f.System.Predict(f.Growth(a)))))
            .GroupBy(g => g.Axis)
            .OrderBy(g => g.Key, StringComparer.Ordinal)
            .Select(g =>
                (IReadOnlyList<(double, double)>)g.Select(e => (e.Estimate.Value, Own(e.Estimate, same))).ToArray()
            );
        return PrintVariation.Of(options, growths, prints.Count);
    }

    /// <summary>
    /// What prints share does not scatter between them: the instrument, faces' deviations, how burrs are cut.
    /// </summary>
    private static double Own(LinearEstimate e, bool sameInstruments) =>
        e.Part(s =>
            !(
                (sameInstruments && s.Name.StartsWith(ModelRows.InstrumentPrefix, StringComparison.Ordinal))
                || s.Name.StartsWith("face.", StringComparison.Ordinal)
                || s.Name == "burr"
            )
        );
}
