using CalibGeom.Light;
using CalibGeom.Meshes;
using CalibGeom.Pictures.Light;
using CalibGeom.Slicing;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Pictures.Tests.Light;

/// <summary>What a panel shows as lit, held against the mesh itself.</summary>
public class DosePanelTests
{
    private const double PitchX = 0.05,
        PitchY = 0.08,
        Layer = 0.1;

    private static readonly TestObject Made = TestObject.Of(Presets.Witness);
    private static readonly TriangleMesh Mesh = Made.ToMesh();
    private static readonly LightDose Dose = new(
        MaskStack.Of(Mesh, PixelGrid.Covering(Mesh.Bounds, PitchX, PitchY, 4), Layer),
        new GaussianBlur(0.02),
        new LayerLight(new WorkingCurve(0.12, 8), 4, 2.5, Layer)
    );
    private static readonly Vector3D X = new(1, 0, 0),
        Y = new(0, 1, 0),
        Z = new(0, 0, 1);

    [Fact]
    public void PixelsThatDifferInXAndYAreLitWhereTheObjectIs()
    {
        BoxPlan box = Made.Boxes[0];
        int layer = (int)((box.BandBottom + box.BandTop) / 2 / Layer);
        var corner = new Vector3D(
            box.X - box.Outside.X / 2 - 1,
            box.Y - box.Outside.Y / 2 - 1,
            Dose.Masks.FilmZ(layer)
        );
        Holds(Panel(corner, X, Y, 4, 4), corner + Z * (Layer / 2), X, Y, PitchX, PitchY);
    }

    [Fact]
    public void LayersAreLitFromTheSideAlongYToo()
    {
        BoxPlan box = Made.Boxes[0];
        var low = new Vector3D(box.X - box.Outside.X / 2 + 0.3, box.Y - box.Outside.Y / 2 - 1, 0.5);
        Holds(Panel(low, Y, Z, 4, 4), low, Y, Z, PitchY, Layer);
    }

    private static DosePanel Panel(Vector3D origin, Vector3D right, Vector3D up, double width, double height) =>
        new(origin, right, up, width, height)
        {
            Title = "",
            Horizontal = "",
            Vertical = "",
        };

    /// <summary>Away from borders by a pixel, lit is what lies within the mesh.</summary>
    private static void Holds(
        DosePanel panel,
        Vector3D plane,
        Vector3D right,
        Vector3D up,
        double pitchRight,
        double pitchUp
    )
    {
        (float Coverage, double X0, double Y0, double X1, double Y1)[] lit = [.. panel.Lit(Dose)];
        SectionContour[] contours = [.. Mesh.CrossSection(plane, Vector3D.Cross(right, up)).Contours];
        bool Solid(double x, double y) =>
            contours.Count(c =>
                Encloses([.. c.Points.ToArray().Select(p => (Vector3D.Dot(p, right), Vector3D.Dot(p, up)))], x, y)
            ) % 2
            == 1;
        double left = Vector3D.Dot(panel.Origin, right),
            low = Vector3D.Dot(panel.Origin, up);
        int inside = 0,
            outside = 0;
        for (double x = left + 0.1; x < left + panel.Width - 0.1; x += 0.0713)
        for (double y = low + 0.1; y < low + panel.Height - 0.1; y += 0.0713)
        {
            bool solid = Solid(x, y);
            var around =
                from i in new[] { -1, 1 }
                from j in new[] { -1, 1 }
                select Solid(x + i * pitchRight, y + j * pitchUp);
            if (around.Any(s => s != solid))
                continue;
            bool shown = lit.Any(r => r.X0 <= x && x < r.X1 && r.Y0 <= y && y < r.Y1);
            Assert.True(
                shown == solid,
                FormattableString.Invariant($"at {x:0.000}, {y:0.000}: lit {shown}, solid {solid}")
            );
            (inside, outside) = solid ? (inside + 1, outside) : (inside, outside + 1);
        }
        Assert.True(inside > 200 && outside > 200, $"{inside} inside, {outside} outside");
        // Whole pixels along a row of pixels.
        var origin = new Vector3D(Dose.Masks.Grid.Origin.X, Dose.Masks.Grid.Origin.Y, Dose.Masks.BaseZ);
        Assert.All(
            lit,
            r =>
            {
                Assert.Equal(1, r.Coverage);
                Assert.Equal(pitchUp, r.Y1 - r.Y0, 1e-9);
                foreach (double border in new[] { r.X0, r.X1 })
                {
                    double pixels = (border - Vector3D.Dot(origin, right)) / pitchRight;
                    Assert.Equal(Math.Round(pixels), pixels, 1e-6);
                }
            }
        );
    }

    private static bool Encloses((double X, double Y)[] ring, double x, double y)
    {
        bool within = false;
        for (int i = 0, j = ring.Length - 1; i < ring.Length; j = i++)
            if (
                ring[i].Y > y != ring[j].Y > y
                && x < (ring[j].X - ring[i].X) * (y - ring[i].Y) / (ring[j].Y - ring[i].Y) + ring[i].X
            )
                within = !within;
        return within;
    }
}
