using CalibGeom.Meshes;

namespace CalibGeom.Slicing;

/// <summary>
/// Where lines along the axes pass through a mesh's surface, taken on sections of it; each section is made once.
/// </summary>
internal sealed class SectionLines(TriangleMesh mesh)
{
    private readonly Dictionary<(char Axis, double At), CrossSection> sections = [];

    /// <summary>The level section at a height.</summary>
    internal CrossSection Level(double z) => Section('z', z);

    /// <summary>The places x where the line at y, z passes the surface, ascending.</summary>
    internal double[] AlongX(double y, double z) => Cuts(Level(z), p => p.Y, y, p => p.X);

    /// <summary>The places y where the line at x, z passes the surface, ascending.</summary>
    internal double[] AlongY(double x, double z) => Cuts(Level(z), p => p.X, x, p => p.Y);

    /// <summary>The places z where the line at x, y passes the surface, ascending.</summary>
    internal double[] AlongZ(double x, double y) => Cuts(Section('y', y), p => p.X, x, p => p.Z);

    private CrossSection Section(char axis, double at)
    {
        if (!sections.TryGetValue((axis, at), out CrossSection? section))
            sections[(axis, at)] = section =
                axis == 'z' ? mesh.CrossSection(at) : mesh.CrossSection(new(0, at, 0), new(0, 1, 0));
        return section;
    }

    private static double[] Cuts(
        CrossSection section,
        Func<Vector3D, double> across,
        double line,
        Func<Vector3D, double> along
    )
    {
        var cuts = new List<double>();
        foreach (SectionContour contour in section.Contours)
        {
            ReadOnlySpan<Vector3D> ring = contour.Points;
            for (int i = 0, j = ring.Length - 1; i < ring.Length; j = i++)
            {
                double a = across(ring[j]),
                    b = across(ring[i]);
                if (a > line != b > line)
                    cuts.Add(along(ring[j]) + (line - a) / (b - a) * (along(ring[i]) - along(ring[j])));
            }
        }
        cuts.Sort();
        return [.. cuts];
    }
}
