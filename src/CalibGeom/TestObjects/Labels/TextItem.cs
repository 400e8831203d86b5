using CalibGeom.TestObjects.Layout;
using CalibGeom.TestObjects.Parts;

namespace CalibGeom.TestObjects.Labels;

/// <summary>A text to be placed, broken into lines in one of several ways.</summary>
internal sealed record TextItem : LayoutItem
{
    internal TextItem(string name, double gap, TextBlock[] blocks)
        : base(name, gap, [.. blocks.Select((b, i) => new Footprint([new Rect(0, 0, b.Width, b.Height)], [], i))])
    {
        Blocks = blocks;
        IsLabel = true;
    }

    internal TextBlock[] Blocks { get; }
}
