using CalibGeom.Meshes;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.TestObjects.Parts.Spans;

/// <summary>A pair of posts whose far faces are a span apart.</summary>
internal sealed class SpanPart(double wanted, double length, bool alongY) : ITestPart
{
    /// <summary>The places over a post's width where the span is taken, as shares of it: within the chamfers.</summary>
    private static readonly double[] Shares = [-0.3, 0, 0.3];

    private readonly SpanPosts posts = new(length, alongY);

    private string Axis => alongY ? "y" : "x";

    private FeatureId Id => KnownFeatures.SpanAlong(Axis);

    public string Name => Id;

    public PartFootprint Footprint =>
        new(posts.Posts, [.. posts.Lanes.Select(l => new Lane(l, LaneKind.Caliper))]) { OnWholePixels = true };

    /// <summary>The spans of an object; none without the group.</summary>
    internal static IEnumerable<ITestPart> Parts(TestObjectSpec spec, PixelGrid pixels)
    {
        if (spec.Spans is not { } spans)
            return [];
        PerAxis made = pixels.Width(new PerAxis(spans.X, spans.Y));
        return [new SpanPart(spans.X, made.X, false), new SpanPart(spans.Y, made.Y, true)];
    }

    public IEnumerable<PartBody> Bodies(PartPlace place) =>
        [new PartBody(Name, posts.Lofts(place.X, place.Y, place.BaseZ))];

    public IEnumerable<PartFeature> Features(PartPlace place)
    {
        (Vector3D along, Vector3D across) = alongY
            ? (new Vector3D(0, 1, 0), new Vector3D(1, 0, 0))
            : (new Vector3D(1, 0, 0), new Vector3D(0, 1, 0));
        var middle = new Vector3D(place.X, place.Y, place.BaseZ + Proportions.PostHeight / 2);
        string axis = Axis.ToUpperInvariant();
        yield return PartFeature.Size(
            Axis,
            $"outside jaws over the far faces of the two posts along {axis}, 3 mm above the plinth",
            [
                .. Shares.Select(s =>
                    GaugeLine.Outside(
                        Id,
                        middle + across * (s * Proportions.PostWidth),
                        along,
                        length,
                        Proportions.PostThickness
                    )
                ),
            ]
        ) with
        {
            Wanted = wanted,
        };
    }
}
