using CalibGeom.Meshes;
using CalibGeom.Planar;
using CalibGeom.Solids;

namespace CalibGeom.TestObjects.Parts.Nest;

/// <summary>
/// One box of the nest. The largest also answers for what the boxes have in common: joints and label.
/// </summary>
internal sealed class BoxPart(NestPlan nest, int index) : ITestPart
{
    /// <summary>Distance that others keep from a box, mm: fingers and a knife reach the neck of a loose one.</summary>
    private const double Room = 2.0;

    /// <summary>
    /// The places along the gauge band, as shares of its height and of the pocket's width, where widths are taken: the
    /// middle, where a jaw lies, and towards its ends, but off lead-in, floor and rounded corners.
    /// </summary>
    private static readonly double[] Heights = [0.2, 0.5, 0.8],
        Shares = [-0.2, 0, 0.2];

    private BoxShape Shape => nest.Boxes[index];

    private string Id => KnownFeatures.BoxHeight(index + 1).Item;

    private bool IsLargest => index + 1 == nest.Boxes.Length;

    public string Name => Id;

    public int TunnelCount => Shape.HasPocket ? 2 : 0;

    public string Label =>
        IsLargest ? string.Join(' ', nest.Spec.Sizes.Select(s => FormattableString.Invariant($"{s:0.###}"))) : "";

    public PartFootprint Footprint
    {
        get
        {
            PerAxis w = Shape.Frame.Outside;
            return new PartFootprint([Rect.Centred(w.X, w.Y)], IsLargest ? Lanes(w) : [])
            {
                Gap = Room,
                OnWholePixels = true,
            };
        }
    }

    public IEnumerable<PartBody> Bodies(PartPlace place) =>
        [new PartBody(Id, BoxLofts.Of(Shape, place.Centre, place.BaseZ).Concat(Dots(place)))];

    public IEnumerable<PartFeature> Features(PartPlace place)
    {
        BoxPlan box = nest.Box(index, place);
        string when = box.Attached ? "while it stands on the plinth" : "after breaking the box off",
            band = FormattableString.Invariant(
                $"{box.Rim - box.BandTop:0.#} to {box.Rim - box.BandBottom:0.#} mm below the rim"
            );
        string outside = $"outside jaws, middle of the faces, {band}, {when}",
            inside = $"inside jaws, middle of the faces, {band}, {when}";
        yield return PartFeature.Size("x", outside, Widths(box, false, true)) with
        {
            Wanted = box.WantedOutside,
        };
        yield return PartFeature.Size("y", outside, Widths(box, true, true)) with
        {
            Wanted = box.WantedOutside,
        };
        if (box.HasPocket)
        {
            yield return PartFeature.Size("x", inside, Widths(box, false, false));
            yield return PartFeature.Size("y", inside, Widths(box, true, false));
        }
        yield return PartFeature.Size(
            "z",
            "depth rod from the rim to the plinth, before breaking any box off",
            Height(box, place.BaseZ)
        );
        if (!IsLargest)
            yield break;
        foreach (JointPlan joint in nest.Joints(place.BaseZ))
            yield return Fit(joint);
    }

    public IEnumerable<Finding> Check(PartPlace place)
    {
        foreach (Finding finding in BoxRules.Check(nest, index, place))
            yield return finding;
        if (!IsLargest)
            yield break;
        foreach (Finding finding in NestRules.Check(nest, place))
            yield return finding;
    }

    /// <summary>The box as it is made.</summary>
    internal BoxPlan Plan(PartPlace place) => nest.Box(index, place);

    /// <summary>The joints as they are made; only the largest box has them.</summary>
    internal IReadOnlyList<JointPlan> Joints(PartPlace place) => IsLargest ? nest.Joints(place.BaseZ) : [];

    /// <summary>The dots of a marked object, along the rim at the back: the height is taken at the side.</summary>
    private IEnumerable<Loft> Dots(PartPlace place)
    {
        double outer = Shape.Frame.Outside.Y / 2,
            flat = Shape.HasPocket ? outer - Shape.Frame.Mouth.HalfY : outer / 2;
        return MarkDots.Along(place, 0, outer - flat / 2, Grid.Snap(place.BaseZ + Shape.Rim), flat);
    }

    private static Lane[] Lanes(PerAxis w)
    {
        const double Half = Proportions.JawWidth / 2,
            Reach = Proportions.JawDepth;
        return
        [
            new(new(w.X / 2, -Half, w.X / 2 + Reach, Half), LaneKind.Caliper),
            new(new(-w.X / 2 - Reach, -Half, -w.X / 2, Half), LaneKind.Caliper),
            new(new(-Half, w.Y / 2, Half, w.Y / 2 + Reach), LaneKind.Caliper),
            new(new(-Half, -w.Y / 2 - Reach, Half, -w.Y / 2), LaneKind.Caliper),
        ];
    }

    private GaugeLine[] Widths(BoxPlan box, bool alongY, bool outer)
    {
        double outside = alongY ? box.Outside.Y : box.Outside.X,
            inside = alongY ? box.Inside.Y : box.Inside.X,
            wall = box.HasPocket ? (outside - inside) / 2 : outside;
        Vector3D along = alongY ? new(0, 1, 0) : new(1, 0, 0),
            across = alongY ? new(1, 0, 0) : new(0, 1, 0);
        string axis = alongY ? "y" : "x";
        FeatureId feature = outer
            ? KnownFeatures.BoxOutside(index + 1, axis)
            : KnownFeatures.BoxInside(index + 1, axis);
        return
        [
            .. from height in Heights
            from share in Shares
            let z = box.BandBottom + height * (box.BandTop - box.BandBottom)
            let middle = new Vector3D(box.X, box.Y, z) + across * (share * inside)
            select outer
                ? GaugeLine.Outside(feature, middle, along, outside, wall)
                : GaugeLine.Inside(feature, middle, along, inside, wall),
        ];
    }

    /// <summary>From the plinth beside the box to the middle of its rim.</summary>
    private GaugeLine Height(BoxPlan box, double plinthTop)
    {
        var up = new Vector3D(0, 0, 1);
        var rim = new Vector3D(box.X + (box.Outside.X + box.Inside.X) / 4, box.Y, box.Rim);
        var foot = new Vector3D(box.X + box.Outside.X / 2 + GaugeLine.Clear, box.Y, plinthTop);
        return new GaugeLine(
            KnownFeatures.BoxHeight(index + 1),
            up,
            new GaugeFace(foot, up, plinthTop, GaugeLine.Clear),
            new GaugeFace(rim, up, 2 * GaugeLine.Clear, GaugeLine.Clear)
        );
    }

    private static PartFeature Fit(JointPlan joint) =>
        new(
            new Feature(
                KnownFeatures.JointFit(joint.Number),
                PartFeature.Tidy(joint.Tighter),
                "fit",
                joint.Clearance.IsUniform ? ""
                    : joint.Clearance.X < joint.Clearance.Y ? "x"
                    : "y",
                $"put box {joint.Number} into box {joint.Number + 1}, cut corners together, and feel: refuses, "
                    + $"binds, slides or rattles"
            ),
            []
        );
}
