using CalibGeom.TestObjects.Parts;

namespace CalibGeom.TestObjects.Rules;

/// <summary>Strokes wide and high enough to be read.</summary>
internal sealed class LabelRule : IDesignRule
{
    private const double LeastStroke = 0.2,
        GoodStroke = 0.3,
        LeastHeight = 0.1,
        GoodHeight = 0.2,
        PixelsAcross = 4,
        LayersUp = 2;

    public IEnumerable<Finding> Check(ObjectPlan plan)
    {
        if (plan.Spec.Labels is not { } labels)
            return [];
        double pitch = plan.Spec.Process is { } p ? Math.Max(p.PixelPitch.X, p.PixelPitch.Y) : 0,
            layer = plan.Spec.Process?.LayerHeight ?? 0;
        return
        [
            .. Judge.AtLeast(
                "label-stroke",
                "labels.stroke",
                "The label stroke",
                labels.Stroke,
                LeastStroke,
                Math.Max(GoodStroke, PixelsAcross * pitch),
                "mm",
                "Make labels.stroke wider, at least four pixels."
            ),
            .. Judge.AtLeast(
                "label-height",
                "labels.height",
                "The labels' height",
                labels.Height,
                LeastHeight,
                Math.Max(GoodHeight, LayersUp * layer),
                "mm",
                "Make labels.height higher, at least two layers."
            ),
        ];
    }
}
