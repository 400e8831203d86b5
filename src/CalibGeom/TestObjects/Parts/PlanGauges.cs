using CalibGeom.Meshes;
using CalibGeom.TestObjects.Layout;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.TestObjects.Parts;

/// <summary>Where the sizes of a plan are measured.</summary>
internal static class PlanGauges
{
    private const double Clear = 0.5;
    private static readonly Vector3D X = new(1, 0, 0),
        Y = new(0, 1, 0),
        Z = new(0, 0, 1);

    internal static IReadOnlyList<GaugeLine> Of(ObjectPlan plan) =>
        [
            .. PlanRecords.Boxes(plan).SelectMany(b => Box(b, plan.PlinthTop)),
            .. Spans(plan),
            .. Plinth(plan),
            .. Columns(plan),
            .. Slots(plan),
            .. Squeeze(plan),
        ];

    private static IEnumerable<GaugeLine> Box(BoxPlan box, double plinthTop)
    {
        double[] heights =
        [
            .. new[] { 0.2, 0.5, 0.8 }.Select(s => box.BandBottom + s * (box.BandTop - box.BandBottom)),
        ];
        foreach (
            (string axis, Vector3D along, Vector3D across, double outside, double inside) in new[]
            {
                ("x", X, Y, box.Outside.X, box.Inside.X),
                ("y", Y, X, box.Outside.Y, box.Inside.Y),
            }
        )
        foreach (double z in heights)
        foreach (double share in new[] { -0.2, 0, 0.2 })
        {
            Vector3D middle = new Vector3D(box.X, box.Y, z) + across * (share * inside);
            double wall = (outside - inside) / 2;
            yield return Outside($"box{box.Number}.outside.{axis}", middle, along, outside, wall / 2);
            yield return Inside($"box{box.Number}.inside.{axis}", middle, along, inside, wall / 2);
        }
        var rim = new Vector3D(box.X + (box.Outside.X + box.Inside.X) / 4, box.Y, box.Rim);
        var foot = new Vector3D(box.X + box.Outside.X / 2 + Clear, box.Y, plinthTop);
        yield return new GaugeLine(
            $"box{box.Number}.height",
            Z,
            new GaugeFace(foot, Z, plinthTop / 2, Clear),
            new GaugeFace(rim, Z, Clear, Clear)
        );
    }

    private static IEnumerable<GaugeLine> Spans(ObjectPlan plan)
    {
        foreach (Placement place in plan.Layout.Parts)
            if (place.Item is SpanItem { Posts: var posts })
                foreach (double share in new[] { -0.3, 0, 0.3 })
                {
                    (Vector3D along, Vector3D across) = posts.AlongY ? (Y, X) : (X, Y);
                    Vector3D middle =
                        new Vector3D(place.X, place.Y, plan.PlinthTop + Proportions.PostHeight / 2)
                        + across * (share * Proportions.PostWidth);
                    yield return Outside(
                        posts.AlongY ? "span.y" : "span.x",
                        middle,
                        along,
                        posts.Length,
                        Proportions.PostThickness / 2
                    );
                }
    }

    private static IEnumerable<GaugeLine> Plinth(ObjectPlan plan)
    {
        if (plan.Layout.Pad is not { } pad)
            yield break;
        (double x, double y) = Middle(pad.Rectangle(-1, 1, -Proportions.PadDepth, 0));
        yield return Outside(
            "plinth.thickness",
            new Vector3D(x, y, plan.PlinthTop / 2),
            Z,
            plan.PlinthTop,
            plan.PlinthTop / 2
        );
    }

    private static IEnumerable<GaugeLine> Columns(ObjectPlan plan)
    {
        for (int i = 0; i < (plan.Columns?.Roots.Length ?? 0); i++)
        {
            double half = plan.Spec.Columns!.Height / 2,
                radius = plan.Columns!.Diameter(i) / 2;
            (double dx, double dy) = plan.Columns.Part(i).Drift(half);
            var axis = new Vector3D(dx, dy, half);
            axis *= 1 / axis.Length;
            var level = new Vector3D(axis.X == 0 && axis.Y == 0 ? 1 : -axis.Y, axis.X, 0);
            level *= 1 / level.Length;
            Vector3D other = Vector3D.Cross(axis, level),
                middle = new(plan.RootOf(i).XMillimetres + dx, plan.RootOf(i).YMillimetres + dy, plan.PlinthTop + half);
            for (int k = 0; k < 8; k++)
            {
                (double sin, double cos) = Math.SinCos(Math.PI * k / 8);
                yield return Outside($"column{i + 1}.diameter", middle, level * cos + other * sin, 2 * radius, radius);
            }
        }
    }

    private static IEnumerable<GaugeLine> Slots(ObjectPlan plan)
    {
        if (plan.Comb is not { } comb)
            yield break;
        Placement place = plan.Find("slots")!;
        for (int i = 0; i < plan.Spec.Slots!.Heights.Count; i++)
        {
            double along = comb.MiddleOf(i),
                height = plan.Spec.Slots.Heights[i];
            (double x, double y) = place.Form.Form == 1 ? (place.X, place.Y + along) : (place.X + along, place.Y);
            yield return Inside($"slot{i + 1}.height", new Vector3D(x, y, comb.Floor + height / 2), Z, height, Clear);
        }
    }

    private static IEnumerable<GaugeLine> Squeeze(ObjectPlan plan)
    {
        if (plan.Tab is not { } tab)
            yield break;
        (double x, double y) = Middle(plan.Layout.Tab!.Value.Rectangle(-1, 1, Proportions.TabGap, SqueezeTab.Reach));
        SqueezeSpec spec = plan.Spec.Squeeze!;
        for (int i = 1; i <= spec.Slots; i++)
            yield return Inside(
                "squeeze.height",
                new Vector3D(x, y, i * spec.Pitch - spec.SlotHeight / 2),
                Z,
                spec.SlotHeight,
                tab.Web / 2
            );
    }

    private static GaugeLine Outside(string feature, Vector3D middle, Vector3D along, double size, double behind) =>
        new(
            feature,
            along,
            new GaugeFace(middle - along * (size / 2), along * -1, behind, Clear),
            new GaugeFace(middle + along * (size / 2), along, behind, Clear)
        );

    private static GaugeLine Inside(string feature, Vector3D middle, Vector3D along, double size, double behind) =>
        new(
            feature,
            along,
            new GaugeFace(middle - along * (size / 2), along, behind, size),
            new GaugeFace(middle + along * (size / 2), along * -1, behind, size)
        );

    private static (double X, double Y) Middle(Rect r) => ((r.X0 + r.X1) / 2, (r.Y0 + r.Y1) / 2);
}
