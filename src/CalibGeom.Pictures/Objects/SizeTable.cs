using CalibGeom.Pictures.Drawings;
using CalibGeom.TestObjects;

namespace CalibGeom.Pictures.Objects;

/// <summary>The sizes of boxes as designed, and what found no place beside a view.</summary>
internal static class SizeTable
{
    private const double Line = 3.6;
    private static readonly string[] Heads = ["outside X", "outside Y", "inside X", "inside Y", "height"];
    private static readonly string[] Sizes = ["outside.x", "outside.y", "inside.x", "inside.y", "height"];

    internal static double HeightOf(TestObject made) => made.Boxes.Count == 0 ? 0 : (made.Boxes.Count + 2) * Line + 3;

    internal static void Draw(Sheet sheet, Room room, TestObject made)
    {
        if (made.Boxes.Count == 0)
            return;
        double y = room.Y + 3,
            wide = Math.Min(19, (room.Width - 14) / Heads.Length);
        sheet.Heading(room.X, y, "Boxes as designed, mm");
        y += Line;
        for (int c = 0; c < Heads.Length; c++)
            sheet.TryText(
                room.X + 14 + (c + 1) * wide - 3,
                y,
                Heads[c],
                new TextStyle(2.1, TextAnchor.End) { Ink = Ink.Muted }
            );
        foreach (BoxPlan box in made.Boxes)
        {
            y += Line;
            sheet.TryText(room.X, y, $"box{box.Number}", new TextStyle(Sheet.TextSize) { Ink = Ink.Blue });
            for (int c = 0; c < Sizes.Length; c++)
                if (made.Features.Find(FeatureId.Parse($"{KnownFeatures.Box}{box.Number}.{Sizes[c]}")) is { } feature)
                    sheet.TryText(
                        room.X + 14 + (c + 1) * wide - 3,
                        y,
                        SizeText.Of(feature.Nominal),
                        new TextStyle(Sheet.TextSize, TextAnchor.End) { Feature = $"{feature.Id}" }
                    );
        }
    }

    /// <summary>One line of sizes that no view had room for.</summary>
    internal static void DrawRest(Sheet sheet, Room room, IReadOnlyList<string> rest)
    {
        if (rest.Count > 0)
            sheet.TryFit(
                room.X,
                room.Bottom - 1,
                "Also: " + string.Join("; ", rest.Distinct()),
                new TextStyle(2.1),
                room.Width
            );
    }
}
