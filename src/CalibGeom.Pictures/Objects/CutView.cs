using CalibGeom.Meshes;
using CalibGeom.Pictures.Drawings;
using CalibGeom.Pictures.Views;
using CalibGeom.Planar;

namespace CalibGeom.Pictures.Objects;

/// <summary>An upright cut through a mesh, in the coordinates along a level direction and up.</summary>
internal sealed class CutView
{
    private readonly Vector2D[][] rings;

    /// <summary>Cuts.</summary>
    /// <param name="mesh">The mesh.</param>
    /// <param name="point">A point of the cut, and the origin of the level coordinate.</param>
    /// <param name="along">The level direction that runs to the right, of length 1.</param>
    internal CutView(TriangleMesh mesh, Vector3D point, Vector3D along)
    {
        Origin = point;
        Along = along;
        rings =
        [
            .. mesh.CrossSection(point, new Vector3D(along.Y, -along.X, 0))
                .Contours.Select(c => c.Points.ToArray().Select(p => new Vector2D(Coordinate(p), p.Z)).ToArray()),
        ];
    }

    internal Vector3D Origin { get; }

    internal Vector3D Along { get; }

    internal double Coordinate(Vector3D p) => Vector3D.Dot(p - Origin, Along);

    /// <summary>How wide the material is at a height, between two coordinates.</summary>
    internal double WidthAt(double height, double from, double to)
    {
        double[] at =
        [
            .. rings
                .SelectMany(r => r.Select((a, i) => (A: a, B: r[(i + 1) % r.Length])))
                .Where(e => e.A.Y <= height != e.B.Y <= height)
                .Select(e => e.A.X + (height - e.A.Y) / (e.B.Y - e.A.Y) * (e.B.X - e.A.X))
                .Where(x => x >= from && x <= to),
        ];
        return at.Length == 0 ? 0 : at.Max() - at.Min();
    }

    /// <summary>Draws what lies in a window, filled and outlined, moved by a shift.</summary>
    internal void Draw(Sheet sheet, Frame frame, Box2D window, Vector2D shift, Ink fill)
    {
        (double x0, double y0) = Sheet.Px(frame.Map(window.Left + shift.X, window.Top + shift.Y));
        (double x1, double y1) = Sheet.Px(frame.Map(window.Right + shift.X, window.Bottom + shift.Y));
        sheet.Drawing.Clip(
            x0,
            y0,
            x1 - x0,
            y1 - y0,
            inner =>
                inner.Rings(
                    rings.Select(r => r.Select(p => Sheet.Px(frame.Map(p.X + shift.X, p.Y + shift.Y)))),
                    fill,
                    new Pen(Ink.Dark, 0.2 * Sheet.PixelsPerMm)
                )
        );
    }
}
