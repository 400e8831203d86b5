using CalibGeom.Meshes;

namespace CalibGeom.Pictures.Views;

/// <summary>
/// A mesh as the eye sees it: hidden surfaces removed, lit from the upper left, sharp edges drawn thin. What is not the
/// object is left transparent, and its shades lie between black and white, so that it stands on light and dark pages
/// alike.
/// </summary>
public static class ShadedView
{
    private const int Over = 3;
    private static readonly Vector3D Body = new(0xA9, 0xB9, 0xC6),
        Line = new(0x35, 0x42, 0x4F);

    /// <summary>Draws a mesh as PNG, as large as fits.</summary>
    /// <param name="mesh">The mesh.</param>
    /// <param name="view">Where it is seen from; <see cref="ViewDirection.Corner"/> by default.</param>
    /// <param name="width">Pixels, 16 to 4000. Default 900.</param>
    /// <param name="height">Pixels, 16 to 4000. Default 700.</param>
    /// <exception cref="ArgumentOutOfRangeException">A size is out of range.</exception>
    public static byte[] ToPng(TriangleMesh mesh, ViewDirection? view = null, int width = 900, int height = 700)
    {
        ArgumentNullException.ThrowIfNull(mesh);
        RequireSize(width, nameof(width));
        RequireSize(height, nameof(height));
        view ??= ViewDirection.Corner;
        ShadedImage image = Render(mesh, view, Fit(mesh, view, width, height));
        return image.ToPng(width, height);
    }

    /// <summary>Draws it at a scale, no larger than the mesh.</summary>
    internal static ShadedImage Render(TriangleMesh mesh, ViewDirection view, double dotsPerMm)
    {
        DepthMap map = DepthMap.Of(mesh, view, dotsPerMm * Over, 2 / dotsPerMm);
        var normals = new Vector3D[mesh.TriangleCount];
        for (int t = 0; t < normals.Length; t++)
            normals[t] = SharpEdges.Normal(mesh.Triangle(t));
        var dots = new byte[4 * map.Width * map.Height];
        for (int row = 0; row < map.Height; row++)
        for (int column = 0; column < map.Width; column++)
            if (map.TriangleAt(column, row) is >= 0 and int t)
                Set(dots, 4 * (row * map.Width + column), Body * Shade(normals[t], view) * Rim(map, column, row));
        DrawEdges(dots, map, mesh, view);
        return new ShadedImage(map.Frame, map.Width, map.Height, Over, dots);
    }

    private static double Fit(TriangleMesh mesh, ViewDirection view, int width, int height)
    {
        Box2D extent = Box2D.Round(mesh, view);
        return Math.Min((width - 4) / Math.Max(extent.Width, 1e-3), (height - 4) / Math.Max(extent.Height, 1e-3));
    }

    /// <summary>Light from the upper left before the viewer, some from the sky, none black.</summary>
    private static double Shade(Vector3D normal, ViewDirection view)
    {
        Vector3D lamp = view.Toward * 0.62 + view.Up * 0.62 - view.Right * 0.48;
        double direct = Math.Max(0, Vector3D.Dot(normal, lamp)),
            sky = 0.5 + 0.5 * normal.Z;
        return Math.Min(1.22, 0.42 + 0.62 * direct + 0.16 * sky);
    }

    /// <summary>Darker where something much nearer begins beside a dot, so that parts stand apart.</summary>
    private static double Rim(DepthMap map, int column, int row)
    {
        double here = map.NearnessAt(column, row);
        foreach ((int dx, int dy) in (ReadOnlySpan<(int, int)>)[(-2, 0), (2, 0), (0, -2), (0, 2)])
        {
            int c = Math.Clamp(column + dx, 0, map.Width - 1),
                r = Math.Clamp(row + dy, 0, map.Height - 1);
            if (map.TriangleAt(c, r) >= 0 && map.NearnessAt(c, r) - here > 1.2)
                return 0.72;
        }
        return 1;
    }

    private static void DrawEdges(byte[] dots, DepthMap map, TriangleMesh mesh, ViewDirection view)
    {
        foreach (var line in LineView.Of(mesh, view))
            for (int i = 0; i + 1 < line.Length; i++)
            {
                (double x0, double y0) = (
                    (line[i].X - map.Frame.Left) * map.Dots,
                    (map.Frame.Top - line[i].Y) * map.Dots
                );
                (double x1, double y1) = (
                    (line[i + 1].X - map.Frame.Left) * map.Dots,
                    (map.Frame.Top - line[i + 1].Y) * map.Dots
                );
                int steps = Math.Max(1, (int)Math.Ceiling(Math.Max(Math.Abs(x1 - x0), Math.Abs(y1 - y0))));
                for (int s = 0; s <= steps; s++)
                    Dab(dots, map, x0 + (x1 - x0) * s / steps, y0 + (y1 - y0) * s / steps);
            }
    }

    private static void Dab(byte[] dots, DepthMap map, double x, double y)
    {
        for (int r = (int)y; r <= (int)y + 1; r++)
        for (int c = (int)x; c <= (int)x + 1; c++)
            if (c >= 0 && r >= 0 && c < map.Width && r < map.Height)
                Set(dots, 4 * (r * map.Width + c), Line);
    }

    private static void Set(byte[] dots, int at, Vector3D colour)
    {
        dots[at] = (byte)Math.Clamp(colour.X, 0, 255);
        dots[at + 1] = (byte)Math.Clamp(colour.Y, 0, 255);
        dots[at + 2] = (byte)Math.Clamp(colour.Z, 0, 255);
        dots[at + 3] = 255;
    }

    private static void RequireSize(int size, string name)
    {
        if (size is < 16 or > 4000)
            throw new ArgumentOutOfRangeException(name, size, "A picture is 16 to 4000 pixels wide and high.");
    }
}
