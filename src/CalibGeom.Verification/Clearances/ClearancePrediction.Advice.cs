namespace CalibGeom.Verification.Clearances;

/// <content>Compensation, tolerance grades and what to measure next.</content>
public sealed partial class ClearancePrediction
{
    /// <summary>Scale factor and edge offset of each axis that was measured.</summary>
    public IReadOnlyList<CompensationAxis> Compensation =>
        Axes.Select(a =>
            {
                double factor = 1 / (1 + a.Scale.Value),
                    offset = -a.Growth.Value * factor;
                return new CompensationAxis(a.Axis, factor, offset, offset / options.PixelPitch);
            })
            .ToArray();

    /// <summary>The sizes compensation would give, for every face of the object along a measured axis.</summary>
    public IReadOnlyList<CompensatedSize> CompensatedSizes()
    {
        var sizes = new List<CompensatedSize>();
        foreach (Face face in matched.Table.Select(Face.Of).OfType<Face>().OrderBy(f => f.Id))
        {
            if (Axes.FirstOrDefault(a => a.Axis == face.Axis) is not { } axis)
                continue;
            CompensationAxis c = Compensation.First(k => k.Axis == face.Axis);
            double Printed(double factor, double offset) =>
                (factor * face.Nominal + 2 * face.Sign * offset) * (1 + axis.Scale.Value)
                + 2 * face.Sign * axis.Growth.Value;
            double? whole = options.PixelPitch is { } p
                ? Printed(c.ScaleFactor, p * Math.Round(c.EdgeOffset / p))
                : null;
            sizes.Add(
                new CompensatedSize(face.Id, face.Nominal, Printed(1, 0), Printed(c.ScaleFactor, c.EdgeOffset), whole)
            );
        }
        return sizes;
    }

    /// <summary>The ISO 286 grade of each feature that was measured, in order of ids.</summary>
    public IReadOnlyList<FeatureGrade> Grades =>
        matched
            .Sizes.GroupBy(g => g.Id)
            .Where(g => matched.Features[g.Key].Nominal > 0)
            .Select(g =>
            {
                double nominal = matched.Features[g.Key].Nominal,
                    mean = g.Sum(r => r.Mean * r.Count) / g.Sum(r => r.Count);
                return new FeatureGrade(g.Key, nominal, mean, Iso286.GradeOf(nominal, mean - nominal));
            })
            .ToArray();

    /// <summary>The coarsest grade among <see cref="Grades"/>; null when one of them has none.</summary>
    public int? OverallGrade => Grades.Any(g => g.Grade is null) ? null : Grades.Max(g => g.Grade);

    /// <summary>Measurements that could be added, best first: three readings each.</summary>
    public IReadOnlyList<Improvement> Improvements() => Improver.Of(matched, options);

    private Knowledge Copy()
    {
        var copy = new Knowledge(options);
        foreach (JointPrediction j in Joints)
        {
            var design = JointDesign.All(matched.Table).First(d => d.Number == j.Number);
            int[] quantities = j.Axes.Select(a => copy.Add(fit.System.Predict(Target(design, a.Axis)))).ToArray();
            foreach (Readings.FeltFit felt in j.Felt)
                copy.Feel(quantities, felt);
        }
        return copy;
    }
}
