using CalibGeom.Meshes;
using CalibGeom.TestObjects.Parts;

namespace CalibGeom.TestObjects.Comparison;

/// <summary>Takes the sizes and counts of a feature table from a mesh, along their gauge lines.</summary>
internal sealed class GaugeSizes(TriangleMesh mesh, SizeFindings findings)
{
    /// <summary>A face further than this from its place is taken for another one, mm.</summary>
    private const double Reach = 1.0;

    private readonly MeshRays rays = new(mesh);

    /// <summary>Checks what one part is measured by, wherever the part stands in the mesh.</summary>
    internal void Check(IEnumerable<PartFeature> features)
    {
        PartFeature[] measured = [.. features.Where(f => f.Lines.Count > 0)];
        // Every round section is found by itself, flat faces of a part together.
        foreach (IGrouping<string, PartFeature> group in measured.GroupBy(f => f.Lines[0].Round ? f.Feature.Id : ""))
        {
            Vector3D shift = ShiftOf([.. group.SelectMany(f => f.Lines)]);
            foreach (PartFeature feature in group)
                Check(feature, shift);
        }
    }

    private void Check(PartFeature feature, Vector3D shift)
    {
        double[] found = [.. feature.Lines.Select(l => Length(l, shift)).OfType<double>()];
        if (feature.Feature.Unit == "count")
            findings.RequireCount(feature.Feature.Id, feature.Lines.Count, found.Length);
        else if (found.Length < feature.Lines.Count)
            findings.Missing(feature.Feature.Id, feature.Feature.Nominal);
        else
            findings.Require(
                feature.Feature.Id,
                feature.Feature.Nominal,
                feature.Lines[0].Round ? found.Average() : found.MaxBy(f => Math.Abs(f - feature.Feature.Nominal))
            );
    }

    /// <summary>The length of a line between the faces that the mesh has, or null.</summary>
    private double? Length(GaugeLine line, Vector3D shift) =>
        Offsets(line, shift) is var (from, to) ? line.Length(from, to) : null;

    private (double From, double To)? Offsets(GaugeLine line, Vector3D shift)
    {
        // Half way to the next gap: where a gap is closed, that of its neighbour is not taken for it.
        double reach = line.IsGap ? Math.Min(Reach, (line.Length() + line.From.Behind) / 2) : Reach;
        return
            rays.Offset(Moved(line.From, shift), reach) is { } from
            && rays.Offset(Moved(line.To, shift), reach) is { } to
            ? (from, to)
            : null;
    }

    private static GaugeFace Moved(GaugeFace face, Vector3D shift) => face with { Point = face.Point + shift };

    /// <summary>
    /// How far the middles of the lines lie from where they should, on the level, by least squares: with the plinth's
    /// size the places on it may change, which changes no size.
    /// </summary>
    private Vector3D ShiftOf(GaugeLine[] lines)
    {
        double xx = 0,
            xy = 0,
            yy = 0,
            x = 0,
            y = 0;
        foreach (GaugeLine line in lines)
        {
            if ((!line.IsSolid && !line.IsGap) || Offsets(line, default) is not var (from, to))
                continue;
            Vector3D d = line.Direction;
            double middle = (Vector3D.Dot(line.From.Outward, d) * from + Vector3D.Dot(line.To.Outward, d) * to) / 2;
            (xx, xy, yy) = (xx + d.X * d.X, xy + d.X * d.Y, yy + d.Y * d.Y);
            (x, y) = (x + middle * d.X, y + middle * d.Y);
        }
        double determinant = xx * yy - xy * xy;
        return determinant > 1e-6 ? new((yy * x - xy * y) / determinant, (xx * y - xy * x) / determinant, 0)
            : xx + yy > 0 ? new(x / (xx + yy), y / (xx + yy), 0)
            : default;
    }
}
