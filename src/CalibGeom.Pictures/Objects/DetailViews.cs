using CalibGeom.Meshes;
using CalibGeom.Pictures.Drawings;
using CalibGeom.Pictures.Views;
using CalibGeom.Planar;
using CalibGeom.TestObjects;

namespace CalibGeom.Pictures.Objects;

/// <summary>A column and the slot comb, cut through, close up.</summary>
internal static class DetailViews
{
    private const double Deep = 0.8,
        Air = 0.5;

    /// <summary>Draws one column; returns where the next thing may begin.</summary>
    internal static double Column(Sheet sheet, Room room, TestObject made, ObjectParts parts, List<string> over)
    {
        if (made.Columns.Count == 0)
            return room.Y;
        ColumnPlan plan = made.Columns.OrderBy(c => c.Diameter).ElementAt(made.Columns.Count / 2);
        var spec = made.Spec.Columns!;
        double azimuth = spec.Lean == 0 ? 0 : spec.Azimuth * Math.PI / 180,
            plinth = made.Spec.Plinth.Thickness,
            drift = spec.Height * Math.Tan(spec.Lean * Math.PI / 180),
            wide = Math.Max(spec.HeadDiameter, 2 * plan.Diameter) / 2 + Air;
        var cut = new CutView(
            parts.Mesh,
            new Vector3D(plan.X, plan.Y, 0),
            new Vector3D(Math.Cos(azimuth), Math.Sin(azimuth), 0)
        );
        Box2D part = Box(parts, KnownFeatures.ColumnDiameter(plan.Number).Item, cut);
        var window = new Box2D(-wide, plinth - Deep, drift + wide, Math.Max(part.Top, plinth + spec.Height) + 0.1);
        double scale = Frame.Fit(window.Width, window.Height, room.Width - 26, 52);
        var frame = new Frame(window, room.X + 12, room.Y + 12, scale);
        sheet.Heading(room.X, room.Y + 3, $"Column {plan.Number}, {Frame.Name(scale)}");
        cut.Draw(sheet, frame, window, (0, 0), Ink.Stone.WithOpacity(0.55));
        var dimensions = new Dimensions(sheet);
        if (plan.LoadRatio > 1)
            dimensions.Level(
                frame.Map(drift - spec.HeadDiameter / 2, part.Top),
                frame.Map(drift + spec.HeadDiameter / 2, part.Top),
                frame.Y,
                false,
                SizeText.Of(spec.HeadDiameter),
                ""
            );
        dimensions.Upright(
            frame.Map(-plan.Diameter / 2, plinth),
            frame.Map(drift - plan.Diameter / 2, plinth + spec.Height),
            frame.X,
            SizeText.Of(spec.Height),
            ""
        );
        over.AddRange(dimensions.Left);
        var leaders = new Leaders(sheet);
        leaders.Add(
            frame.Map(drift / 2 + plan.Diameter / 2, plinth + spec.Height / 2),
            $"\u2300 {SizeText.Of(plan.Diameter)}",
            KnownFeatures.ColumnDiameter(plan.Number)
        );
        over.AddRange(leaders.Draw(frame.Room.Right + 4, frame.Y, frame.Room.Bottom));
        return frame.Room.Bottom + 4;
    }

    /// <summary>Draws the comb; returns where the next thing may begin.</summary>
    internal static double Comb(Sheet sheet, Room room, TestObject made, ObjectParts parts, List<string> over)
    {
        GaugeLine[] tunnels = [.. made.Gauges.Where(g => g.Feature.Part == KnownFeatures.Slot)];
        if (tunnels.Length == 0)
            return room.Y;
        Vector3D first = tunnels[0].From.Point,
            last = tunnels[^1].From.Point,
            along = new(last.X - first.X, last.Y - first.Y, 0);
        along = along.Length > 0 ? along * (1 / along.Length) : new Vector3D(1, 0, 0);
        // Towards +X or +Y, as seen from the front or from the right.
        if (along.X + along.Y < 0)
            along *= -1;
        var cut = new CutView(parts.Mesh, first, along);
        Box2D part = Box(parts, KnownFeatures.SlotsOpen.Item, cut);
        var window = new Box2D(part.Left - Air, made.Spec.Plinth.Thickness - Deep, part.Right + Air, part.Top + 0.05);
        double scale = Frame.Fit(window.Width, window.Height, room.Width - 2, room.Height - 18);
        var frame = new Frame(window, room.X, room.Y + 14, scale);
        sheet.Heading(room.X, room.Y + 3, $"Slot comb, {Frame.Name(scale)}, heights of tunnels");
        cut.Draw(sheet, frame, window, (0, 0), Ink.Stone.WithOpacity(0.55));
        Vector2D[] places = [.. tunnels.Select(t => frame.Map(cut.Coordinate(t.From.Point), part.Top))];
        string[] texts = [.. tunnels.Select(t => SizeText.Of(t.Length()))];
        double apart = Enumerable
            .Range(1, places.Length - 1)
            .Select(i => Math.Abs(places[i].X - places[i - 1].X))
            .Append(double.PositiveInfinity)
            .Min();
        // All level or all upright, so that none takes another's place.
        bool upright = texts.Any(t => Sheet.Measure(t) + 0.6 > apart);
        for (int i = 0; i < tunnels.Length; i++)
        {
            string feature = $"{tunnels[i].Feature}";
            TextStyle style = upright
                ? new TextStyle(2.1, Turn: 90) { Feature = feature }
                : new TextStyle(2.1, TextAnchor.Middle) { Feature = feature };
            if (!sheet.TryText(places[i].X + (upright ? 0.8 : 0), places[i].Y - 1.4, texts[i], style))
                over.Add($"{feature} {texts[i]}");
        }
        return frame.Room.Bottom + 4;
    }

    private static Box2D Box(ObjectParts parts, string name, CutView cut) =>
        Box2D.Round(
            Enumerable
                .Range(0, parts.Mesh.TriangleCount)
                .Where(t => parts.NameOf(t) == name)
                .SelectMany(t =>
                {
                    (Vector3D a, Vector3D b, Vector3D c) = parts.Mesh.Triangle(t);
                    return new[] { a, b, c };
                })
                .Select(p => new Vector2D(cut.Coordinate(p), p.Z))
        );
}
