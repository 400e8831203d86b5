using CalibGeom.Formats.Stl;
using CalibGeom.Meshes;
using CalibGeom.Planar;
using CalibGeom.Solids;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;
using NetTopologySuite.Geometries;

namespace CalibGeom.Tests.TestObjects;

/// <summary>
/// A test object whose mesh went through STL bytes, and sections of it in the object's own frame, before any tilt.
/// </summary>
internal sealed class PrintedObject
{
    /// <summary>One grid unit, mm.</summary>
    internal const double Unit = 1.0 / Grid.UnitsPerMillimetre;

    private readonly double sin;
    private readonly double cos;
    private readonly double lift;

    internal PrintedObject(TestObject made)
    {
        Made = made;
        using var stream = new MemoryStream();
        StlWriter.Write(stream, made.ToMesh(), "test");
        stream.Position = 0;
        Mesh = StlReader.Read(stream);
        (sin, cos) = Math.SinCos(made.Spec.Tilt.Angle * Math.PI / 180);
        lift =
            made.Spec.Tilt.Angle == 0 ? 0 : -cos * made.Solid!.Lofts.First(l => l.Underside is not null).Underside!.Z0;
    }

    internal static PrintedObject Of(TestObjectSpec spec) => new(TestObject.Of(spec));

    internal TestObject Made { get; }

    internal TriangleMesh Mesh { get; }

    /// <summary>
    /// The contours of a section square to an axis through a point, both given and returned in the object's frame; the
    /// direction is that of a column's axis or of Z.
    /// </summary>
    internal IEnumerable<(double Area, Vector3D[] Points)> Section(Vector3D point, Vector3D axis)
    {
        Vector3D origin = Turn(point);
        CrossSection section = Mesh.CrossSection(origin + new Vector3D(0, 0, lift), Turn(axis));
        return section.Contours.Select(c =>
            (c.SignedArea, Array.ConvertAll(c.Points.ToArray(), p => TurnBack(p - new Vector3D(0, 0, lift))))
        );
    }

    /// <summary>
    /// The level contours at a height that lie within a distance of a place: material's outlines first.
    /// </summary>
    internal (double Area, Vector3D[] Points)[] LevelSection(double x, double y, double z, double reach) =>
        [
            .. Section(new Vector3D(0, 0, z), new Vector3D(0, 0, 1))
                .Where(c => c.Points.All(p => Math.Abs(p.X - x) <= reach && Math.Abs(p.Y - y) <= reach))
                .OrderByDescending(c => c.Area),
        ];

    /// <summary>The outer contour and the pocket's contour of a box at a height; no pocket where it has none.</summary>
    internal (Vector3D[] Outer, Vector3D[] Pocket) BoxSection(BoxPlan box, double z)
    {
        var contours = LevelSection(box.X, box.Y, z, Math.Max(box.Outside.X, box.Outside.Y) / 2 + 0.1);
        Assert.Equal(box.HasPocket ? 2 : 1, contours.Length);
        return (contours[0].Points, box.HasPocket ? contours[1].Points : []);
    }

    internal static Polygon ToPolygon(Vector3D[] ring) =>
        new(new LinearRing([.. ring.Append(ring[0]).Select(p => new Coordinate(p.X, p.Y))]));

    private Vector3D Turn(Vector3D v) =>
        Made.Spec.Tilt.Axis == TiltAxis.X
            ? new(v.X, v.Y * cos - v.Z * sin, v.Y * sin + v.Z * cos)
            : new(v.X * cos + v.Z * sin, v.Y, v.Z * cos - v.X * sin);

    private Vector3D TurnBack(Vector3D v) =>
        Made.Spec.Tilt.Axis == TiltAxis.X
            ? new(v.X, v.Y * cos + v.Z * sin, v.Z * cos - v.Y * sin)
            : new(v.X * cos - v.Z * sin, v.Y, v.Z * cos + v.X * sin);
}
