using CalibGeom.Meshes;
using CalibGeom.Pictures.Drawings;
using CalibGeom.Pictures.Views;
using CalibGeom.TestObjects;

namespace CalibGeom.Pictures.Objects;

/// <summary>The nest cut along X: box by box as printed, and put together with its clearances.</summary>
internal static class NestSections
{
    private const double Side = 0.9,
        BelowPlinth = 1.2,
        Apart = 11,
        Above = 15;
    private static readonly Ink[] Fills =
    [
        Ink.Blue.WithOpacity(0.25),
        Ink.Ochre.WithOpacity(0.28),
        Ink.Stone.WithOpacity(0.55),
        Ink.Teal.WithOpacity(0.25),
    ];

    private static CutView[] Cuts(TestObject made, ObjectParts parts) =>
        [.. made.Boxes.Select(b => new CutView(parts.Mesh, new Vector3D(b.X, b.Y, 0), new Vector3D(1, 0, 0)))];

    /// <summary>Draws the boxes as printed; returns where the next thing may begin.</summary>
    internal static double Printed(Sheet sheet, Room room, TestObject made, ObjectParts parts, List<string> over)
    {
        if (made.Boxes.Count == 0)
            return room.Y;
        CutView[] cuts = Cuts(made, parts);
        double bottom = made.Boxes[0].Rim - made.Boxes[0].Height - BelowPlinth,
            rim = made.Boxes.Max(b => b.Rim);
        double scale = Frame.Fit(
            made.Boxes.Sum(b => b.Outside.X + 2 * Side),
            rim - bottom,
            room.Width - Apart * cuts.Length,
            36
        );
        sheet.Heading(room.X, room.Y + 3, $"Section along X, boxes as printed, {Frame.Name(scale)}");
        double x = room.X + Apart,
            y = room.Y + 3 + Above;
        var dimensions = new Dimensions(sheet);
        for (int i = 0; i < cuts.Length; i++)
        {
            BoxPlan box = made.Boxes[i];
            double half = box.Outside.X / 2;
            var window = new Box2D(-half - Side, bottom, half + Side, rim);
            var frame = new Frame(window, x, y, scale);
            cuts[i].Draw(sheet, frame, window with { Top = rim + 0.2 }, (0, 0), Fills[i % Fills.Length]);
            double inner = box.Inside.X / 2;
            if (made.Features.Find(KnownFeatures.BoxInside(box.Number, "x")) is { } inside)
                dimensions.Level(
                    frame.Map(-inner, box.Rim),
                    frame.Map(inner, box.Rim),
                    y,
                    false,
                    SizeText.Of(inside.Nominal),
                    $"{inside.Id}"
                );
            if (made.Features.Find(KnownFeatures.BoxOutside(box.Number, "x")) is { } outside)
                dimensions.Level(
                    frame.Map(-half, box.Rim),
                    frame.Map(half, box.Rim),
                    y,
                    false,
                    SizeText.Of(outside.Nominal),
                    $"{outside.Id}"
                );
            if (made.Features.Find(KnownFeatures.BoxHeight(box.Number)) is { } height)
                dimensions.Upright(
                    frame.Map(-half, box.Rim - box.Height),
                    frame.Map(-half, box.Rim),
                    frame.X,
                    SizeText.Of(height.Nominal),
                    $"{height.Id}"
                );
            sheet.TryText(
                frame.MapX(0),
                frame.Room.Bottom + 3.2,
                $"box{box.Number}",
                new TextStyle(Sheet.TextSize, TextAnchor.Middle) { Ink = Ink.Blue }
            );
            x += frame.Width + Apart;
        }
        over.AddRange(dimensions.Left);
        return y + (rim - bottom) * scale + 6;
    }

    /// <summary>Draws them put together; returns where the next thing may begin.</summary>
    internal static double Seated(Sheet sheet, Room room, TestObject made, ObjectParts parts, List<string> over)
    {
        if (made.Joints.Count == 0)
            return room.Y;
        CutView[] cuts = Cuts(made, parts);
        BoxPlan last = made.Boxes[^1];
        double half = last.Outside.X / 2 + Side,
            bottom = last.Rim - last.Height - BelowPlinth;
        double[] lifts = [.. made.Boxes.Select((_, i) => made.Joints.Skip(i).Sum(j => j.Lift))];
        double top = made.Boxes.Select((b, i) => b.Rim + lifts[i]).Max();
        double scale = Frame.Fit(2 * half, top - bottom, room.Width - 41, 46);
        sheet.Heading(room.X, room.Y + 3, $"Put together, {Frame.Name(scale)}");
        var frame = new Frame(new Box2D(-half, bottom, half, top), room.X + 4, room.Y + 6, scale);
        for (int i = cuts.Length - 1; i >= 0; i--)
        {
            BoxPlan box = made.Boxes[i];
            double foot = box.Attached ? bottom : NeckOf(cuts[i], box),
                side = box.Attached ? half : box.Outside.X / 2 + 0.02;
            cuts[i]
                .Draw(
                    sheet,
                    frame,
                    new Box2D(-side, foot, side, box.Rim + 0.2),
                    (0, lifts[i]),
                    Fills[i % Fills.Length]
                );
        }
        var leaders = new Leaders(sheet);
        foreach (JointPlan joint in made.Joints)
        {
            double lift = lifts[joint.Number],
                z = (joint.EngagedFrom + joint.EngagedTo) / 2 + lift;
            string clearance = joint.Clearance.IsUniform
                ? $"{SizeText.Of(joint.Clearance.X)} a side"
                : $"{SizeText.Of(joint.Clearance.X)} in X, {SizeText.Of(joint.Clearance.Y)} in Y";
            leaders.Add(
                frame.Map(made.Boxes[joint.Number - 1].Outside.X / 2, z),
                $"joint{joint.Number}.fit: {clearance}",
                KnownFeatures.JointFit(joint.Number)
            );
        }
        double height = Math.Max(frame.Height, Leaders.HeightOf(leaders.Count));
        over.AddRange(leaders.Draw(frame.Room.Right + 6, frame.Y, frame.Y + height));
        return frame.Y + height + 4;
    }

    /// <summary>Where a loose box breaks off: the narrowest place below its gauge band.</summary>
    private static double NeckOf(CutView cut, BoxPlan box)
    {
        double plinth = box.Rim - box.Height,
            half = box.Outside.X / 2;
        return Enumerable
            .Range(1, 99)
            .Select(i => plinth + 0.05 + (box.BandBottom - plinth - 0.05) * i / 100)
            .Where(z => cut.WidthAt(z, -half, half) > 0)
            .MinBy(z => cut.WidthAt(z, -half, half));
    }
}
