using System.Globalization;
using CalibGeom.Meshes;
using CalibGeom.Planar;

namespace CalibGeom.Solids;

/// <summary>Turns an assembled mesh, snaps it back to the grid, and mends triangles that snapping flattened.</summary>
internal static class Tilting
{
    /// <summary>Grid units: half a one from the rounding of a corner's height, as much from that of the mean.</summary>
    private const double MostRounding = 1.5;

    internal static TriangleMesh Apply(MeshAssembly mesh, IReadOnlyList<Loft> lofts, TiltAxis axis, double degrees)
    {
        HashSet<GridPoint3D> underside = [.. lofts.Where(l => l.Underside is not null).SelectMany(UndersideOf)];
        (double sin, double cos) = Math.SinCos(degrees * Math.PI / 180);
        double floor = underside.Count > 0 ? underside.Average(p => Height(p, axis, sin, cos)) : 0;
        RequireFit(underside, axis, sin, cos, floor);
        var turned = mesh.Vertices.ConvertAll(p =>
            underside.Contains(p) ? Turn(p, axis, sin, cos, floor) with { Z = 0 } : Turn(p, axis, sin, cos, floor)
        );
        var flat = new FlatTriangles(turned, [.. mesh.Triangles]);
        flat.Remove();
        var result = new MeshAssembly();
        var vertices = new LevelVertices([.. turned]);
        for (int i = 0; i < flat.Triangles.Length; i += 3)
            result.Add(At(flat.Triangles[i]), At(flat.Triangles[i + 1]), At(flat.Triangles[i + 2]));
        ManifoldCheck.Require(result);
        return result.ToMesh();

        int At(int vertex) => vertices.IndexIn(result, vertex);
    }

    /// <summary>
    /// An underside is a plane rounded to the grid; what lies further from level after the turn belongs to another
    /// angle.
    /// </summary>
    private static void RequireFit(HashSet<GridPoint3D> underside, TiltAxis axis, double sin, double cos, double floor)
    {
        foreach (GridPoint3D p in underside)
            if (Math.Abs(Height(p, axis, sin, cos) - floor) > MostRounding)
                throw new ArgumentException(
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"The oblique underside does not lie level after this turn: at {p} mm it is "
                            + $"{(Height(p, axis, sin, cos) - floor) / Grid.UnitsPerMillimetre:0.####} mm "
                            + $"off. Turn by the "
                            + $"angle that the wedge was made for."
                    ),
                    "degrees"
                );
    }

    /// <summary>From the coordinates of a tilted mesh back to those of its lofts.</summary>
    internal static Affine3D Undo(IReadOnlyList<Loft> lofts, TiltAxis axis, double degrees)
    {
        (double sin, double cos) = Math.SinCos(degrees * Math.PI / 180);
        double floor = lofts
            .Where(l => l.Underside is not null)
            .SelectMany(UndersideOf)
            .Select(p => Height(p, axis, sin, cos))
            .DefaultIfEmpty(0)
            .Average();
        Affine3D lower = Affine3D.Shift(new(0, 0, floor / Grid.UnitsPerMillimetre));
        return lower.Then(TurnOf(axis, -degrees));
    }

    /// <summary>The turn about a level axis, by the right-hand rule.</summary>
    internal static Affine3D TurnOf(TiltAxis axis, double degrees) =>
        axis == TiltAxis.X ? Affine3D.TurnX(degrees) : Affine3D.TurnY(degrees);

    private static IEnumerable<GridPoint3D> UndersideOf(Loft loft) =>
        loft
            .Bottom.Rings.SelectMany(r => r.Points.ToArray())
            .Select(p => new GridPoint3D(p, loft.Underside!.LevelAt(p)));

    private static double Height(GridPoint3D p, TiltAxis axis, double sin, double cos) =>
        axis == TiltAxis.X ? p.Y * sin + p.Z * cos : -p.X * sin + p.Z * cos;

    private static GridPoint3D Turn(GridPoint3D p, TiltAxis axis, double sin, double cos, double floor)
    {
        double x = axis == TiltAxis.X ? p.X : p.X * cos + p.Z * sin;
        double y = axis == TiltAxis.X ? p.Y * cos - p.Z * sin : p.Y;
        return new GridPoint3D(Round(x), Round(y), Round(Height(p, axis, sin, cos) - floor));
    }

    private static int Round(double units) => Grid.FromMillimetres(units / Grid.UnitsPerMillimetre);
}
