using CalibGeom.Pictures.Drawings;
using CalibGeom.Pictures.Views;
using CalibGeom.Planar;
using CalibGeom.TestObjects;

namespace CalibGeom.Pictures.Objects;

/// <summary>The object from above and, below that, from the front, at one scale.</summary>
internal static class PlanViews
{
    private const double Dimensioned = 14,
        Named = 26,
        Below = 13,
        Heading = 6,
        Table = 6;
    private static readonly Pen Edge = new(Ink.Dark, 0.2 * Sheet.PixelsPerMm);

    /// <summary>Draws them; returns what found no place, and where the next thing may begin.</summary>
    internal static (IReadOnlyList<string> Left, double Bottom) Draw(
        Sheet sheet,
        Room room,
        TestObject made,
        ObjectParts parts,
        bool outlines
    )
    {
        Box2D above = Box2D.Round(parts.Mesh, ViewDirection.Top),
            front = Box2D.Round(parts.Mesh, ViewDirection.Front);
        double table = SizeTable.HeightOf(made);
        double scale = Frame.Fit(
            above.Width,
            above.Height + front.Height,
            room.Width - Dimensioned - Named,
            room.Height - table - 2 * Heading - Below - Table
        );
        var top = new Frame(above, room.X + Dimensioned, room.Y + Heading, scale);
        var dimensions = new Dimensions(sheet);
        sheet.Heading(room.X, room.Y + 3, $"From above, {Frame.Name(scale)}");
        if (outlines)
            Lines(sheet, top, LineView.Of(parts.Mesh, ViewDirection.Top));
        Spans(dimensions, top, made);
        dimensions.Level(
            top.Map(above.Left, above.Bottom),
            top.Map(above.Right, above.Bottom),
            top.Room.Bottom,
            true,
            SizeText.Of(above.Width),
            ""
        );
        dimensions.Upright(
            top.Map(above.Left, above.Bottom),
            top.Map(above.Left, above.Top),
            top.X,
            SizeText.Of(above.Height),
            ""
        );
        Leaders leaders = Names(sheet, top, made);
        double least = Math.Max(top.Height, Leaders.HeightOf(leaders.Count));
        IReadOnlyList<string> unnamed = leaders.Draw(top.Room.Right + 6, top.Y, top.Y + least);
        var below = new Frame(front, top.X, top.Y + least + Below + Heading, scale);
        if (outlines)
            Lines(sheet, below, LineView.Of(parts.Mesh, ViewDirection.Front));
        Front(sheet, dimensions, below, made);
        SizeTable.Draw(sheet, new Room(room.X, below.Room.Bottom + Table, room.Width, table), made);
        return ([.. dimensions.Left, .. unnamed], below.Room.Bottom + Table + table);
    }

    private static void Lines(Sheet sheet, Frame frame, IReadOnlyList<Vector2D[]> lines) =>
        sheet.Drawing.Polylines(lines.Select(l => l.Select(p => Sheet.Px(frame.Map(p.X, p.Y)))), Edge);

    private static void Front(Sheet sheet, Dimensions dimensions, Frame frame, TestObject made)
    {
        // Beside the dimensions: the text of a low object's height reaches up to the heading.
        sheet.Heading(frame.X, frame.Y - 3, $"From the front, {Frame.Name(frame.Scale)}");
        Box2D e = frame.Extent;
        dimensions.Upright(
            frame.Map(e.Left, e.Bottom),
            frame.Map(e.Left, made.Spec.Plinth.Thickness),
            frame.X,
            SizeText.Of(made.Spec.Plinth.Thickness),
            made.Features.Find(KnownFeatures.PlinthThickness)?.Id ?? ""
        );
        dimensions.Upright(frame.Map(e.Left, e.Bottom), frame.Map(e.Left, e.Top), frame.X, SizeText.Of(e.Height), "");
    }

    private static void Spans(Dimensions dimensions, Frame frame, TestObject made)
    {
        foreach (GaugeLine g in made.Gauges.Where(g => g.Feature == KnownFeatures.SpanAlong("x")).Take(1))
            dimensions.Level(
                frame.Map(g.From.Point.X, g.From.Point.Y),
                frame.Map(g.To.Point.X, g.To.Point.Y),
                frame.Room.Bottom,
                true,
                SizeText.Of(g.Length()),
                g.Feature
            );
        foreach (GaugeLine g in made.Gauges.Where(g => g.Feature == KnownFeatures.SpanAlong("y")).Take(1))
            dimensions.Upright(
                frame.Map(g.From.Point.X, g.From.Point.Y),
                frame.Map(g.To.Point.X, g.To.Point.Y),
                frame.X,
                SizeText.Of(g.Length()),
                g.Feature
            );
    }

    private static Leaders Names(Sheet sheet, Frame frame, TestObject made)
    {
        var leaders = new Leaders(sheet);
        foreach (BoxPlan box in made.Boxes)
            leaders.Add(
                frame.Map(box.X, box.Y),
                box.Attached ? $"box{box.Number} (stays)" : $"box{box.Number} (loose)"
            );
        foreach (ColumnPlan column in made.Columns.OrderBy(c => c.X).TakeLast(1))
            leaders.Add(
                frame.Map(column.X, column.Y),
                made.Columns.Count > 1 ? $"column1 to {made.Columns.Count}" : "column1"
            );
        foreach (
            FeatureId named in (FeatureId[])
                [
                    KnownFeatures.SpanAlong("x"),
                    KnownFeatures.SpanAlong("y"),
                    KnownFeatures.PlinthThickness,
                    KnownFeatures.SlotsOpen,
                    KnownFeatures.SqueezeOpen,
                ]
        )
        foreach (GaugeLine g in made.Gauges.Where(g => NamedBy(g.Feature) == named).TakeLast(1))
            leaders.Add(frame.Map(g.To.Point.X, g.To.Point.Y), named);
        foreach (GaugeLine g in made.Gauges.Where(g => g.Feature == KnownFeatures.BridgeThickness).TakeLast(1))
            leaders.Add(frame.Map(g.To.Point.X, g.To.Point.Y), $"{g.Feature}: {SizeText.Of(g.Length())}", g.Feature);
        foreach (GaugeLine g in made.Gauges.Where(g => NamedBy(g.Feature) == KnownFeatures.SqueezeOpen).Take(1))
            leaders.Add(frame.Map(g.From.Point.X, g.From.Point.Y), "scraper in on this side");
        return leaders;
    }

    /// <summary>A count stands for the tunnels or slots that it counts.</summary>
    private static FeatureId NamedBy(FeatureId size) =>
        size.Part switch
        {
            KnownFeatures.Slot => KnownFeatures.SlotsOpen,
            KnownFeatures.Squeeze => KnownFeatures.SqueezeOpen,
            _ => size,
        };
}
