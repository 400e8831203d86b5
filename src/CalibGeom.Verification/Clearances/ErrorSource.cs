using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Clearances;

/// <summary>
/// One independent error of mean zero: a jaw's bias, one face's form, the scatter of one mean. Sources of one component
/// share how well their uncertainty is known.
/// </summary>
internal sealed record ErrorSource(
    string Name,
    string Component,
    double U,
    InputShape Shape,
    double DegreesOfFreedom,
    Evaluation Evaluation
)
{
    /// <summary>
    /// Draws a value; Student's t enters through <paramref name="inflation"/>, one factor for the whole component.
    /// </summary>
    internal double Draw(SeededRandom random, double inflation) =>
        Shape switch
        {
            InputShape.Rectangular => U * Math.Sqrt(3) * (2 * random.Uniform() - 1),
            _ => U * inflation * random.Normal(),
        };
}
