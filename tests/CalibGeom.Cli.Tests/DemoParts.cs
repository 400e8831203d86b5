using CalibGeom.Formats.Stl;
using CalibGeom.Planar;
using CalibGeom.Solids;

namespace CalibGeom.Cli.Tests;

/// <summary>Production parts of a small workshop that makes fixtures for watch repair.</summary>
internal static class DemoParts
{
    /// <summary>
    /// A holder for a watch movement: a base with a ring that takes the movement, two clamp towers, a slot for a
    /// screwdriver.
    /// </summary>
    internal static void WriteHolder(string path, double x, double y)
    {
        Region foot = new(
            Outline.Rectangle(x - 42, y - 15, x + 42, y + 15),
            Outline.Rectangle(x - 27, y - 3, x - 21, y + 3),
            Outline.Rectangle(x + 21, y - 3, x + 27, y + 3)
        );
        Region ring = new(Outline.Circle(x, y, 29.5), Outline.Circle(x, y, 25.6));
        Write(
            path,
            new Solid(
                Loft.Prism(foot, 0, 4),
                Loft.Prism(ring, 4, 11),
                new Loft(
                    Outline.Rectangle(x - 40, y - 9, x - 31, y + 9),
                    4,
                    Outline.Rectangle(x - 38, y - 7, x - 33, y + 7),
                    16
                ),
                new Loft(
                    Outline.Rectangle(x + 31, y - 9, x + 40, y + 9),
                    4,
                    Outline.Rectangle(x + 33, y - 7, x + 38, y + 7),
                    16
                )
            )
        );
    }

    /// <summary>A tray for screws with three round wells.</summary>
    internal static void WriteTray(string path, double x, double y) =>
        Write(
            path,
            new Solid(
                Loft.Prism(Outline.Rectangle(x - 30, y - 12, x + 30, y + 12), 0, 2),
                Loft.Prism(
                    new Region(
                        Outline.Rectangle(x - 30, y - 12, x + 30, y + 12),
                        Outline.Circle(x - 19, y, 16),
                        Outline.Circle(x, y, 16),
                        Outline.Circle(x + 19, y, 16)
                    ),
                    2,
                    9
                )
            )
        );

    /// <summary>A plain block.</summary>
    internal static void WriteBlock(string path, double x0, double y0, double x1, double y1, double z0 = 0) =>
        Write(path, new Solid(Loft.Prism(Outline.Rectangle(x0, y0, x1, y1), z0, z0 + 12)));

    private static void Write(string path, Solid solid)
    {
        using FileStream file = File.Create(path);
        StlWriter.Write(file, solid.ToMesh(), "Demo grey fixture");
    }
}
