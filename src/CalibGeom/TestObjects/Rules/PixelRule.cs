using CalibGeom.TestObjects.Parts;

namespace CalibGeom.TestObjects.Rules;

/// <summary>What pixels make of every flat width: both counts where the place in the pixel is not known.</summary>
internal sealed class PixelRule : IDesignRule
{
    public IEnumerable<Finding> Check(ObjectPlan plan) =>
        plan.Spec.Process is not { PixelPitch: var pitch }
            ? []
            : plan
                .Features.Where(f => f.Feature.Axis is "x" or "y" && f.Lines.Any(l => !l.Round))
                .Select(f =>
                    SizeNotes.Pixels(f.Feature.Id, f.Lines[0].Length(), f.Wanted, PitchAlong(f.Feature.Axis, pitch))
                );

    private static double PitchAlong(string axis, PerAxis pitch) => axis == "x" ? pitch.X : pitch.Y;
}
