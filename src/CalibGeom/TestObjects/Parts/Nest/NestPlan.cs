using CalibGeom.TestObjects.Specs;

namespace CalibGeom.TestObjects.Parts.Nest;

/// <summary>Widths and shapes of all boxes, which depend on each other.</summary>
internal sealed class NestPlan
{
    private readonly NestWidths widths;

    internal NestPlan(NestSpec spec, PixelGrid pixels)
    {
        Spec = spec;
        widths = NestWidths.Of(spec, pixels);
        Boxes = ShapesOf(BoxFrame.Of(spec, widths));
    }

    internal NestSpec Spec { get; }

    /// <summary>The boxes, innermost first.</summary>
    internal BoxShape[] Boxes { get; }

    /// <summary>The parts of an object's nest, innermost first; none without one.</summary>
    internal static IEnumerable<ITestPart> Parts(TestObjectSpec spec, PixelGrid pixels)
    {
        if (spec.Nest is not { } nest)
            return [];
        var plan = new NestPlan(nest, pixels);
        return plan.Boxes.Select((_, i) => new BoxPart(plan, i));
    }

    /// <summary>A box as it is made in a place.</summary>
    internal BoxPlan Box(int index, PartPlace place)
    {
        BoxShape box = Boxes[index];
        return new BoxPlan(index + 1, Spec.Sizes[index], box.Frame.Outside, box.Frame.Inside, index + 1 == Boxes.Length)
        {
            HasPocket = box.HasPocket,
            X = place.X,
            Y = place.Y,
            BandBottom = place.BaseZ + box.BandBottom,
            BandTop = place.BaseZ + box.BandTop,
            PocketFloor = place.BaseZ + box.PocketFloor,
            Rim = place.BaseZ + box.Rim,
            Height = box.Rim,
        };
    }

    /// <summary>The joints as they are made.</summary>
    internal IReadOnlyList<JointPlan> Joints(double plinthTop) =>
        [.. Boxes.Skip(1).Select((outer, i) => Joint(plinthTop, i + 1, Boxes[i], outer))];

    private JointPlan Joint(double plinthTop, int number, BoxShape inner, BoxShape outer)
    {
        double lift = outer.PocketFloor - inner.HeightOfHalfWidth(outer.Well.Section.HalfX);
        return new JointPlan(number, Spec.Clearances[number - 1], widths.Clearance(number))
        {
            Lift = lift,
            EngagedFrom = plinthTop + Math.Max(outer.BandBottom, inner.BandBottom + lift),
            EngagedTo = plinthTop + Math.Min(outer.BandTop, inner.BandTop + lift),
            Protrusion = inner.Rim + lift - outer.Rim,
        };
    }

    private static BoxShape[] ShapesOf(BoxFrame[] frames)
    {
        var shapes = new BoxShape[frames.Length];
        for (int i = 0; i < frames.Length; i++)
        {
            BoxShape? inner = i > 0 ? shapes[i - 1] : null;
            shapes[i] = i == frames.Length - 1 ? BoxShape.OnWaist(frames[i], inner) : BoxShape.Loose(frames[i], inner);
        }
        return shapes;
    }
}
