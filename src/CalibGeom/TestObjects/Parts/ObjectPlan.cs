using CalibGeom.Planar;
using CalibGeom.Solids;
using CalibGeom.TestObjects.Labels;
using CalibGeom.TestObjects.Layout;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.TestObjects.Parts;

/// <summary>
/// Everything about an object that follows from its spec by arithmetic, before any solid is made: widths, shapes and
/// places.
/// </summary>
internal sealed class ObjectPlan
{
    private List<(string, IReadOnlyList<Loft>)>? parts;
    private ArgumentException? fault;

    internal ObjectPlan(TestObjectSpec spec)
    {
        Spec = spec;
        Pixels = new PixelGrid(spec);
        PlinthTop = PlinthPart.Top(spec.Plinth);
        Comb = spec.Slots is { } slots ? new SlotComb(slots, PlinthTop) : null;
        Tab = spec.Squeeze is { } squeeze && !Tilted ? new SqueezeTab(squeeze, PlinthTop) : null;
        if (spec.Nest is { } nest)
        {
            Widths = NestWidths.Of(nest, Pixels);
            Boxes = ShapesOf(BoxFrame.Of(nest, Widths));
        }
        if (spec.Spans is { } spans)
            Span = Pixels.Width(new PerAxis(spans.X, spans.Y));
        var items = new PartItems(this);
        Layout = ObjectLayout.Of(items.All, Tab is not null, !Tilted, spec.Plinth.EdgeChamfer, Pixels);
        if (spec.Columns is { } columns)
            Columns = new ColumnBlock(columns, Find("columns")!.Form.Form, Pixels);
    }

    internal TestObjectSpec Spec { get; }

    internal PixelGrid Pixels { get; }

    /// <summary>Top of the plinth above the plate, mm, on the grid.</summary>
    internal double PlinthTop { get; }

    internal bool Tilted => Spec.Tilt.Angle != 0;

    internal NestWidths? Widths { get; }

    /// <summary>The boxes, innermost first; none without a nest.</summary>
    internal BoxShape[] Boxes { get; } = [];

    /// <summary>The spans as they are made, mm.</summary>
    internal PerAxis? Span { get; }

    internal ColumnBlock? Columns { get; }

    internal SlotComb? Comb { get; }

    internal SqueezeTab? Tab { get; }

    internal ObjectLayout Layout { get; }

    /// <summary>
    /// The places that light must leave open all through: two vents a box, tunnels, slots of the squeeze tab.
    /// </summary>
    internal int TunnelCount =>
        2 * Boxes.Length + (Spec.Slots?.Heights.Count ?? 0) + (Tab is null ? 0 : Spec.Squeeze!.Slots);

    /// <summary>The place of a part, or null when the object has none of that name.</summary>
    internal Placement? Find(string name) => Layout.Parts.FirstOrDefault(p => p.Item.Name == name);

    /// <summary>The centre of a box, mm.</summary>
    internal Placement PlaceOf(int box) => Find($"box{box + 1}")!;

    /// <summary>The centre of a column's root on the grid.</summary>
    internal GridPoint RootOf(int column)
    {
        Placement block = Find("columns")!;
        (double x, double y) = Columns!.Roots[column];
        return GridPoint.FromMillimetres(block.X + x, block.Y + y);
    }

    /// <summary>
    /// Each part that can be made, with its lofts: the feature or group it belongs to, and what it is made of.
    /// </summary>
    internal IReadOnlyList<(string Subject, IReadOnlyList<Loft> Lofts)> Parts => parts ??= MakeParts();

    /// <summary>Why a part cannot be made, or null when all can.</summary>
    internal ArgumentException? Fault => Parts is null ? null : fault;

    private List<(string, IReadOnlyList<Loft>)> MakeParts()
    {
        var made = new List<(string, IReadOnlyList<Loft>)>();
        foreach ((string subject, IEnumerable<Loft> lofts) in AllParts())
            try
            {
                made.Add((subject, [.. lofts]));
            }
            catch (ArgumentException e)
            {
                fault ??= e;
            }
        return made;
    }

    private IEnumerable<(string Subject, IEnumerable<Loft> Lofts)> AllParts()
    {
        yield return ("plinth", new PlinthPart(Spec.Plinth, Spec.Tilt, Layout.HalfX, Layout.HalfY, Layout.Pad).Lofts());
        for (int i = 0; i < Boxes.Length; i++)
            yield return (
                $"box{i + 1}",
                BoxPart.Lofts(Boxes[i], GridPoint.FromMillimetres(PlaceOf(i).X, PlaceOf(i).Y), PlinthTop)
            );
        for (int i = 0; i < (Columns?.Roots.Length ?? 0); i++)
            yield return ($"column{i + 1}", Columns!.Part(i).Lofts(RootOf(i), PlinthTop));
        foreach (Placement place in Layout.Parts)
            if (SmallPart(place) is { } lofts)
                yield return (place.Item.Name, lofts);
        if (Tab is not null)
            yield return ("squeeze", Tab.Lofts(Layout.Tab!.Value));
    }

    private IEnumerable<Loft>? SmallPart(Placement place)
    {
        double labelTop = Grid.Snap(PlinthTop + (Spec.Labels ?? new LabelsSpec()).Height);
        return place.Item switch
        {
            { Name: "slots" } => Comb!.Lofts(place.X, place.Y, place.Form.Form == 1),
            SpanItem span => span.Posts.Lofts(place.X, place.Y, PlinthTop),
            TextItem text => text.Blocks[place.Form.Form]
                .Shapes(GridPoint.FromMillimetres(place.X, place.Y))
                .Select(r => Loft.Prism(r, PlinthTop, labelTop)),
            { Name: "arrow" } => [Loft.Prism(DirectionArrow.At(place.X, place.Y), PlinthTop, labelTop)],
            _ => null,
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
