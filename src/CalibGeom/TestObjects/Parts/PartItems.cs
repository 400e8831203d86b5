using CalibGeom.TestObjects.Labels;
using CalibGeom.TestObjects.Layout;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.TestObjects.Parts;

/// <summary>The parts of an object as the layout sees them.</summary>
internal sealed class PartItems
{
    private const double BoxGap = 2.0,
        ColumnGap = 1.5,
        PostGap = 1.5,
        CombGap = 1.5,
        LabelGap = 0.8;

    internal PartItems(ObjectPlan plan)
    {
        TestObjectSpec spec = plan.Spec;
        All =
        [
            .. plan.Boxes.Select((b, i) => BoxItem(b, i, plan.Boxes.Length)).Reverse(),
            .. Columns(plan),
            .. Spans(plan.Span),
            .. Comb(plan.Comb),
            .. Texts(spec),
            Arrow(),
        ];
    }

    internal LayoutItem[] All { get; }

    private static LayoutItem BoxItem(BoxShape box, int index, int count)
    {
        PerAxis w = box.Frame.Outside;
        const double Half = Proportions.JawWidth / 2,
            Reach = Proportions.JawDepth;
        Rect[] lanes =
            index + 1 < count
                ? []
                :
                [
                    new(w.X / 2, -Half, w.X / 2 + Reach, Half),
                    new(-w.X / 2 - Reach, -Half, -w.X / 2, Half),
                    new(-Half, w.Y / 2, Half, w.Y / 2 + Reach),
                    new(-Half, -w.Y / 2 - Reach, Half, -w.Y / 2),
                ];
        return new LayoutItem($"box{index + 1}", BoxGap, [new Footprint([Rect.Centred(w.X, w.Y)], lanes)])
        {
            HasWholePixels = true,
        };
    }

    private static IEnumerable<LayoutItem> Columns(ObjectPlan plan)
    {
        if (plan.Spec.Columns is not { } columns)
            yield break;
        int count = columns.Diameters.Count * columns.Copies;
        yield return new LayoutItem(
            "columns",
            ColumnGap,
            [.. ColumnBlock.RowLengths(count).Select(m => BlockForm(columns, m, plan.Pixels))]
        );
    }

    /// <summary>The block seen from above, with the room that leaning columns take.</summary>
    private static Footprint BlockForm(ColumnsSpec columns, int perRow, PixelGrid pixels)
    {
        var block = new ColumnBlock(columns, perRow, pixels);
        double half = Enumerable.Range(0, block.Roots.Length).Max(i => block.Part(i).HalfExtent);
        (double driftX, double driftY) = block.Part(0).Drift(columns.Height);
        Rect roots = new Rect(
            block.Roots.Min(r => r.X),
            block.Roots.Min(r => r.Y),
            block.Roots.Max(r => r.X),
            block.Roots.Max(r => r.Y)
        ).Grow(half);
        return new Footprint([roots.Join(roots.Move(driftX, driftY))], [], perRow);
    }

    private static IEnumerable<LayoutItem> Spans(PerAxis? spans)
    {
        if (spans is not { } span)
            yield break;
        yield return new SpanItem("span.x", PostGap, new SpanPosts(span.X, false)) { HasWholePixels = true };
        yield return new SpanItem("span.y", PostGap, new SpanPosts(span.Y, true)) { HasWholePixels = true };
    }

    private static IEnumerable<LayoutItem> Comb(SlotComb? comb)
    {
        if (comb is null)
            yield break;
        Rect bar = Rect.Centred(comb.Length, Proportions.TunnelDepth);
        yield return new LayoutItem(
            "slots",
            CombGap,
            [new([bar], []), new([new(bar.Y0, bar.X0, bar.Y1, bar.X1)], [], 1)]
        );
    }

    private static IEnumerable<LayoutItem> Texts(TestObjectSpec spec)
    {
        if (spec.Labels is not { } labels)
            yield break;
        string widths = spec.Nest is { } nest ? string.Join(' ', nest.Sizes.Select(Number)) : "";
        string diameters = spec.Columns is { Diameters: var d }
            ? d.Count > 1
                ? $"{Number(d[0])}-{Number(d[^1])}"
                : Number(d[0])
            : "";
        foreach (
            (string name, string text) in (IReadOnlyList<(string, string)>)
                [("label.title", spec.Title), ("label.widths", widths), ("label.diameters", diameters)]
        )
        {
            TextBlock[] blocks = [.. TextBlock.Breakings(text, labels.Stroke)];
            if (blocks.Length > 0)
                yield return new TextItem(name, LabelGap, blocks);
        }
    }

    private static string Number(double value) => FormattableString.Invariant($"{value:0.###}");

    private static LayoutItem Arrow() =>
        new("arrow", LabelGap, [new Footprint([Rect.Centred(Proportions.ArrowLength, Proportions.ArrowWidth)], [])])
        {
            IsLabel = true,
        };
}
