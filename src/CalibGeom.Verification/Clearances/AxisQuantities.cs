namespace CalibGeom.Verification.Clearances;

/// <summary>The numbers under which a state of knowledge holds an axis's scale and growth.</summary>
internal sealed record AxisQuantities(int Scale, int Growth, int NextGrowth)
{
    internal static AxisQuantities Of(ModelFit fit, Knowledge known, string axis) =>
        new(
            known.Add(fit.System.Predict(fit.Scale(axis))),
            known.Add(fit.System.Predict(fit.Growth(axis))),
            known.Add(fit.System.Predict(fit.Growth(axis, PrintTarget.Next)))
        );
}
