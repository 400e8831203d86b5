using CalibGeom.TestObjects.Rules;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.TestObjects.Parts.Labels;

/// <summary>Strokes wide and high enough to be read.</summary>
internal static class LabelRules
{
    private const double LeastStroke = 0.2,
        GoodStroke = 0.3,
        LeastHeight = 0.1,
        GoodHeight = 0.2,
        PixelsAcross = 4,
        LayersUp = 2;

    internal static IEnumerable<Finding> Check(LabelsSpec labels, ProcessSpec? process)
    {
        double pitch = process is { } p ? Math.Max(p.PixelPitch.X, p.PixelPitch.Y) : 0,
            layer = process?.LayerHeight ?? 0;
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
