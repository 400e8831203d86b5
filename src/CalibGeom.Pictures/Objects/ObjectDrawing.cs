using CalibGeom.Pictures.Drawings;
using CalibGeom.TestObjects;

namespace CalibGeom.Pictures.Objects;

/// <summary>
/// A drawing of a test object for the workshop, true to scale on its paper: from above and from the front, the nest cut
/// through as printed and put together, a column and the comb close up, the sizes, the map of columns and a title
/// block. Everything follows from the object; nothing overlaps.
/// </summary>
public static class ObjectDrawing
{
    private const double Margin = 8,
        Strip = 9,
        Rest = 8,
        CombHeight = 46;

    /// <summary>Draws an object, untilted.</summary>
    /// <param name="made">The object.</param>
    /// <param name="name">What it is called, such as the preset's name.</param>
    /// <param name="paper">The paper; <see cref="Paper.A4"/> by default.</param>
    /// <exception cref="InputException">A design error leaves nothing to draw.</exception>
    public static Drawing Draw(TestObject made, string name, Paper? paper = null) => Draw(made, name, paper, true);

    /// <summary>
    /// The same, with or without the outlines of what is seen from above and the front, which take most of the time.
    /// </summary>
    internal static Drawing Draw(TestObject made, string name, Paper? paper, bool outlines)
    {
        ArgumentNullException.ThrowIfNull(made);
        ArgumentNullException.ThrowIfNull(name);
        ObjectParts parts = ObjectParts.Of(made);
        var sheet = new Sheet(paper ?? Paper.A4, $"Test object {name}");
        var body = new Room(
            Margin + 2,
            Margin + 2,
            sheet.Paper.Width - 2 * Margin - 4,
            sheet.Paper.Height - 2 * Margin - 4 - Strip
        );
        sheet.Border(new Room(Margin, Margin, sheet.Paper.Width - 2 * Margin, sheet.Paper.Height - 2 * Margin));
        var left = new Room(body.X, body.Y, body.Width * 0.54, body.Height);
        var right = new Room(left.Right + 4, body.Y, body.Right - left.Right - 4, body.Height);
        var over = new List<string>();
        (IReadOnlyList<string> unplaced, double leftUsed) = PlanViews.Draw(sheet, left, made, parts, outlines);
        over.AddRange(unplaced);
        double y = NestSections.Printed(sheet, right, made, parts, over);
        Room row = right with { Y = y, Height = right.Bottom - y };
        double split = made.Joints.Count > 0 && made.Columns.Count > 0 ? row.Width * 0.66 : row.Width;
        y = Math.Max(
            NestSections.Seated(sheet, row with { Width = split }, made, parts, over),
            DetailViews.Column(
                sheet,
                made.Joints.Count > 0 ? row with { X = row.X + split, Width = row.Width - split } : row,
                made,
                parts,
                over
            )
        );
        double last = TitleBlock.Height;
        // The comb is drawn close up where there is room for it.
        Room free = left with
        {
            Y = leftUsed,
            Height = left.Bottom - Rest - leftUsed,
        };
        if (free.Height >= CombHeight)
            DetailViews.Comb(sheet, free, made, parts, over);
        else
            y = DetailViews.Comb(sheet, right with { Y = y, Height = right.Bottom - y - last }, made, parts, over);
        Room rest = right with { Y = y, Height = right.Bottom - y };
        double half = rest.Width * 0.5;
        ColumnMap.Draw(sheet, rest with { Width = half - 3 }, made, over);
        TitleBlock.Draw(sheet, rest with { X = rest.X + half, Width = half }, made, name);
        over.AddRange(made.Features.Where(IsOfAnotherPart).Select(f => $"{f.Id} {SizeText.Of(f.Nominal)}"));
        SizeTable.DrawRest(sheet, new Room(left.X, left.Bottom - Rest, left.Width, Rest), over);
        TitleBlock.Caution(sheet, new Room(body.X, body.Bottom + 1.5, body.Width, Strip));
        return sheet.Drawing;
    }

    /// <summary>Whether a size belongs to a part that no view gives the size of.</summary>
    private static bool IsOfAnotherPart(Feature feature) =>
        feature.Unit == "mm"
        && feature.Id.Part
            is not (
                KnownFeatures.Box
                or KnownFeatures.Span
                or KnownFeatures.Plinth
                or KnownFeatures.Column
                or KnownFeatures.Slot
                or KnownFeatures.Bridge
                or KnownFeatures.Squeeze
            );
}
