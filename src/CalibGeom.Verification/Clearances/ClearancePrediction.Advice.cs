namespace CalibGeom.Verification.Clearances;

/// <content>Compensation, tolerance grades and what to measure next.</content>
public sealed partial class ClearancePrediction
{
    private IReadOnlyList<CompensationAxis>? compensation;
    private IReadOnlyList<FeatureGrade>? grades;

    /// <summary>Scale factor and edge offset of each axis that was measured.</summary>
    public IReadOnlyList<CompensationAxis> Compensation =>
        compensation ??= Axes.Select(a => Clearances.Compensation.Of(a, options.PixelPitch)).ToArray();

    /// <summary>The ISO 286 grade of each gauge face that was measured, in order of ids.</summary>
    public IReadOnlyList<FeatureGrade> Grades => grades ??= GradesOf();

    /// <summary>The coarsest grade among <see cref="Grades"/>; null when one of them has none.</summary>
    public int? OverallGrade =>
        Grades.Select(g => g.Grade).OfType<ToleranceGrade>().ToArray() is { Length: > 0 } faces
        && faces.All(g => g.Grade is not null)
            ? faces.Max(g => g.Grade)
            : null;

    /// <summary>The sizes compensation would give, for every face of the object along a measured axis.</summary>
    public IReadOnlyList<CompensatedSize> CompensatedSizes()
    {
        var sizes = new List<CompensatedSize>();
        foreach (Face face in prints[0].Table.Select(Face.Of).OfType<Face>().OrderBy(f => f.Id))
        {
            if (Axes.FirstOrDefault(a => a.Axis == face.Axis) is not { } axis)
                continue;
            CompensationAxis c = Compensation.First(k => k.Axis == face.Axis);
            double Printed(double factor, double offset) =>
                (factor * face.Nominal + 2 * face.Sign * offset) * (1 + axis.Scale.Value)
                + 2 * face.Sign * axis.Growth.Value;
            double? whole = options.PixelPitch is { } p
                ? Printed(c.ScaleFactor.Value, p * Math.Round(c.EdgeOffset.Value / p))
                : null;
            sizes.Add(
                new CompensatedSize(
                    face.Id,
                    face.Nominal,
                    Printed(1, 0),
                    Printed(c.ScaleFactor.Value, c.EdgeOffset.Value),
                    whole
                )
            );
        }
        return sizes;
    }

    /// <summary>
    /// Measurements that could be added, best first: three readings each. Judged by the sizes alone; what was felt
    /// stays out on both sides of the ratio.
    /// </summary>
    public IReadOnlyList<Improvement> Improvements() => prints.Count == 1 ? Improver.Of(prints[0], options) : [];

    private FeatureGrade[] GradesOf() =>
        prints
            .SelectMany(p => p.Sizes)
            .GroupBy(g => g.Id)
            .Where(g => Nominal(g.First()) > 0)
            .OrderBy(g => g.Key)
            .Select(g =>
            {
                double mean = g.Sum(r => r.Mean * r.Count) / g.Sum(r => r.Count),
                    expanded = ReadUncertainty(g.First());
                Face? face = Face.Of(prints[0].Features[g.First().Id]);
                return new FeatureGrade
                {
                    Feature = g.Key,
                    Nominal = Nominal(g.First()),
                    Measured = mean,
                    Expanded = expanded,
                    Grade = face is null ? null : ToleranceGrade.Of(face.Nominal, mean - face.Nominal, expanded),
                };
            })
            .ToArray();

    private double Nominal(ReadingGroup g) => prints[0].Features[g.Id].Nominal;

    /// <summary>What one face's mean says of its size: jaws, scale, form, and step or scatter.</summary>
    private double ReadUncertainty(ReadingGroup g)
    {
        Face? face = Face.Of(prints[0].Features[g.Id]);
        Readings.Jaw jaw = g.Instrument.Jaw ?? face?.Jaw ?? Readings.Jaw.Outside;
        double error = g.Instrument.ErrorOf(jaw),
            step = RepeatScatter.OfStep(g.Instrument),
            scatter = fit.Scatter.TryGetValue(g.Instrument.Name, out RepeatScatter? s)
                ? Math.Max(s.OfMean(g), step)
                : step,
            form = Check.FormError;
        return 2 * Math.Sqrt(error * error + scatter * scatter + form * form);
    }
}
