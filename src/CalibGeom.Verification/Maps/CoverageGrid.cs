namespace CalibGeom.Verification.Maps;

/// <summary>Light and a mask that evens it out, as plain numbers.</summary>
public static class CoverageGrid
{
    /// <summary>The first line, by which such a file is known.</summary>
    public const string Header = "x,y,light,mask\n";

    private const int Cells = 31;

    /// <summary>
    /// Writes CSV rows <c>x,y,light,mask</c> over the plate: place in mm, light over that of the brightest place, and
    /// the share of the light to let through so that every place gets what the weakest does.
    /// </summary>
    /// <param name="map">The map.</param>
    /// <param name="writer">Where to; left open.</param>
    public static void Write(MapResult map, TextWriter writer)
    {
        ArgumentNullException.ThrowIfNull(map);
        ArgumentNullException.ThrowIfNull(writer);
        var places = OneExposure.Grid(map.Options, Cells).ToArray();
        double[] light = places.Select(p => map.LightAt(p.X, p.Y).Value).ToArray();
        double brightest = light.Max(),
            weakest = light.Min();
        writer.Write(Header);
        for (int i = 0; i < places.Length; i++)
            writer.Write(
                FormattableString.Invariant(
                    $"{places[i].X:0.##},{places[i].Y:0.##},{Math.Exp(light[i] - brightest):0.0000},{Math.Exp(weakest - light[i]):0.0000}\n"
                )
            );
    }
}
