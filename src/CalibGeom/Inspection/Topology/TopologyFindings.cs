using System.Globalization;
using CalibGeom.Meshes;

namespace CalibGeom.Inspection.Topology;

/// <summary>Puts a report into words.</summary>
internal static class TopologyFindings
{
    private sealed record Wording(DefectKind Kind, Severity Severity, string Rule, string One, string Many, string Meaning, string Remedy);

    private static readonly Wording[] Wordings =
    [
        new(DefectKind.OpenEdge, Severity.Error, "mesh-open-edge", "edge has", "edges have", "only one triangle: the surface has a gap, and what is inside is anyone's guess",
            "Close the gap in the program that made the mesh, or export it with a finer weld."),
        new(DefectKind.FlippedEdge, Severity.Error, "mesh-flipped-edge", "edge lies", "edges lie", "between triangles whose outsides disagree: layers may come out hollow or missing",
            "Make the normals consistent and export again."),
        new(DefectKind.CrowdedEdge, Severity.Warning, "mesh-crowded-edge", "edge has", "edges have", "more than two triangles: bodies meet in an edge, or a face is there twice",
            "Move the bodies apart or join them properly."),
        new(DefectKind.PinchedVertex, Severity.Warning, "mesh-pinched-vertex", "vertex joins", "vertices join", "parts of the surface in a single point, which cannot be printed",
            "Move the parts by a fraction of a layer so that they overlap or come clear."),
        new(DefectKind.DegenerateTriangle, Severity.Warning, "mesh-degenerate-triangle", "triangle has", "triangles have", "no area",
            "Remove them; most programs offer it as a clean-up."),
        new(DefectKind.DuplicateTriangle, Severity.Warning, "mesh-duplicate-triangle", "triangle lies", "triangles lie", "exactly on an earlier one: a face is there twice",
            "Remove the copies."),
        new(DefectKind.Crossing, Severity.Warning, "mesh-crossing", "pair of triangles crosses or overlaps", "pairs of triangles cross or overlap", "in the same place: inside and outside are not clear there",
            "Unite the bodies in the program that made them."),
        new(DefectKind.Contact, Severity.Warning, "mesh-contact", "pair of triangles touches", "pairs of triangles touch", "without sharing a vertex: bodies in contact, or a vertex in the middle of another's edge",
            "Unite the bodies, move them apart, or export with matching vertices."),
        new(DefectKind.InsideOutComponent, Severity.Error, "mesh-inside-out", "component is", "components are", "inside out: slicers may print the space round it or nothing",
            "Reverse its normals."),
    ];

    internal static IReadOnlyList<Finding> Of(TopologyReport report, Func<Vector3D, string>? nameOf)
    {
        var findings = new List<Finding>();
        foreach (Wording wording in Wordings)
            if (report[wording.Kind].Count > 0) findings.Add(Defect(wording, report[wording.Kind], nameOf));
        int bodies = report.Components.Count(c => !c.IsCavity), cavities = report.Components.Count - bodies;
        if (bodies > 1) findings.Add(new("mesh-components", Severity.Note, "", $"The mesh consists of {bodies} separate bodies.", "") { Value = bodies });
        if (cavities > 0) findings.Add(new("mesh-cavity", Severity.Note, "", $"{cavities} closed {(cavities == 1 ? "hollow lies" : "hollows lie")} inside: resin in it stays liquid.", "") { Value = cavities });
        return [.. findings.OrderByDescending(f => f.Severity)];
    }

    private static Finding Defect(Wording wording, MeshDefect defect, Func<Vector3D, string>? nameOf)
    {
        string subject = defect.Count == 1 ? $"1 {wording.One}" : $"{defect.Count.ToString(CultureInfo.InvariantCulture)} {wording.Many}";
        return new(wording.Rule, wording.Severity, nameOf?.Invoke(defect.Places[0]) ?? "", $"{subject} {wording.Meaning}; {(defect.Count == 1 ? "at" : "first at")} {Place(defect.Places[0])}.", wording.Remedy)
        {
            Value = defect.Count,
            Limit = 0,
        };
    }

    private static string Place(Vector3D p) => string.Create(CultureInfo.InvariantCulture, $"x {p.X:0.###}, y {p.Y:0.###}, z {p.Z:0.###}");
}
