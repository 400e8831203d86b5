using CalibGeom.TestObjects.Layout;

namespace CalibGeom.TestObjects.Parts;

/// <summary>A pair of posts to be placed.</summary>
internal sealed record SpanItem(string Name, double Gap, SpanPosts Posts)
    : LayoutItem(Name, Gap, [new Footprint(Posts.Posts, Posts.Lanes)]);
