using CalibGeom.Meshes;

namespace CalibGeom.Plates;

/// <summary>Parts that stand in each other: the slicer would light the same place for both.</summary>
internal static class PartOverlaps
{
    private const double Slack = 1e-3;

    internal static IEnumerable<Finding> Of(PlateLayout layout)
    {
        for (int i = 0; i < layout.Parts.Count; i++)
        for (int k = i + 1; k < layout.Parts.Count; k++)
            if (Common(layout.Surveys[i].Bounds, layout.Surveys[k].Bounds) is { } common && Meet(layout, i, k))
                yield return Overlap(layout.Surveys[i].Name, layout.Surveys[k].Name, common);
    }

    /// <summary>The box that two boxes have in common, or null.</summary>
    private static Box3D? Common(Box3D a, Box3D b)
    {
        var min = new Vector3D(Math.Max(a.Min.X, b.Min.X), Math.Max(a.Min.Y, b.Min.Y), Math.Max(a.Min.Z, b.Min.Z));
        var max = new Vector3D(Math.Min(a.Max.X, b.Max.X), Math.Min(a.Max.Y, b.Max.Y), Math.Min(a.Max.Z, b.Max.Z));
        return max.X - min.X > Slack && max.Y - min.Y > Slack && max.Z - min.Z > Slack ? new Box3D(min, max) : null;
    }

    /// <summary>Whether the surfaces touch or cross; the smaller part is held in memory, the other passes it.</summary>
    private static bool Meet(PlateLayout layout, int i, int k)
    {
        (PlatePart kept, PlatePart passing) =
            layout.Parts[i].TriangleCount <= layout.Parts[k].TriangleCount
                ? (layout.Parts[i], layout.Parts[k])
                : (layout.Parts[k], layout.Parts[i]);
        layout.Cancellation.ThrowIfCancellationRequested();
        var proof = new DistanceProof([kept.ToMesh()]);
        proof.Pass(passing, _ => layout.Cancellation.ThrowIfCancellationRequested());
        return proof.Distance <= 0;
    }

    private static Finding Overlap(string one, string other, Box3D common)
    {
        Vector3D middle = (common.Min + common.Max) * 0.5;
        return new Finding(
            "parts-overlap",
            Severity.Warning,
            one,
            FormattableString.Invariant(
                $"The surfaces of {one} and {other} touch or cross, near X {middle.X:0.#}, Y {middle.Y:0.#}, Z {middle.Z:0.#} mm."
            ),
            "Move one of them in the slicer and export both as they will be printed."
        )
        {
            Places = [new FindingPlace(middle.X, middle.Y, middle.Z, "")],
        };
    }
}
