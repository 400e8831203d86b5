using CalibGeom.Pictures.Drawings;
using CalibGeom.TestObjects;

namespace CalibGeom.Pictures.Objects;

/// <summary>Which column stands where, seen from above, the front row below.</summary>
internal static class ColumnMap
{
    internal static void Draw(Sheet sheet, Room room, TestObject made, List<string> over)
    {
        if (made.Columns.Count == 0)
            return;
        int rows = made.Columns.Max(c => c.Row),
            places = made.Columns.Max(c => c.Place);
        double wide = Math.Min(11, room.Width / places),
            high = Math.Min(7.2, (room.Height - 9) / rows);
        sheet.Heading(room.X, room.Y + 3, "Columns from above");
        double y0 = room.Y + 5.2;
        foreach (ColumnPlan column in made.Columns)
        {
            var cell = new Room(room.X + (column.Place - 1) * wide, y0 + (rows - column.Row) * high, wide, high);
            sheet.Border(cell, 0.13);
            double middle = cell.X + wide / 2,
                size = Math.Min(2.3, high * 0.36);
            string diameter = SizeText.Of(column.Diameter),
                feature = KnownFeatures.ColumnDiameter(column.Number);
            bool written =
                sheet.TryFit(
                    middle,
                    cell.Y + high * 0.44,
                    $"{column.Number}",
                    new TextStyle(size, TextAnchor.Middle, true) { Ink = Ink.Blue },
                    wide - 1
                )
                && sheet.TryFit(
                    middle,
                    cell.Y + high * 0.88,
                    diameter,
                    new TextStyle(size, TextAnchor.Middle) { Feature = feature },
                    wide - 1
                );
            if (!written)
                over.Add($"{feature} {diameter}");
        }
        sheet.TryText(
            room.X + places * wide / 2,
            y0 + rows * high + 3,
            "front",
            new TextStyle(2.1, TextAnchor.Middle) { Ink = Ink.Muted }
        );
    }
}
