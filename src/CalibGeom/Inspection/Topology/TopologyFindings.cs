using System.Globalization;
using CalibGeom.Meshes;

namespace CalibGeom.Inspection.Topology;

/// <summary>Puts a report into words.</summary>
internal static class TopologyFindings
{
    private sealed record Wording(
        DefectKind Kind,
        Severity Severity,
        string Rule,
        string One,
        string Many,
        string Meaning,
        string Remedy
    );

    private static readonly Wording[] Wordings =
    [
        new(
            DefectKind.OpenEdge,
            Severity.Error,
            "mesh-open-edge",
            "edge has",
            "edges have",
            "only one triangle: the surface has a gap, and what is inside is anyone's guess",
            "Close the gap in the program that made the mesh, or export it with a finer weld."
        ),
        new(
            DefectKind.FlippedEdge,
            Severity.Error,
            "mesh-flipped-edge",
            "edge lies",
            "edges lie",
            "between triangles whose outsides disagree: layers may come out hollow or missing",
            "Make the normals consistent and export again."
        ),
        new(
            DefectKind.CrowdedEdge,
            Severity.Warning,
            "mesh-crowded-edge",
            "edge has",
            "edges have",
            "more than two triangles: bodies meet in an edge, or a face is there twice",
            "Move the bodies apart or join them properly."
        ),
        new(
            DefectKind.PinchedVertex,
            Severity.Warning,
            "mesh-pinched-vertex",
            "vertex joins",
            "vertices join",
            "parts of the surface in a single point, which cannot be printed",
            "Move the parts by a fraction of a layer so that they overlap or come clear."
        ),
        new(
            DefectKind.DegenerateTriangle,
            Severity.Warning,
            "mesh-degenerate-triangle",
            "triangle has",
            "triangles have",
            "no area",
            "Remove them; most programs offer it as a clean-up."
        ),
        new(
            DefectKind.DuplicateTriangle,
            Severity.Warning,
            "mesh-duplicate-triangle",
            "triangle lies",
            "triangles lie",
            "exactly on an earlier one: a face is there twice",
            "Remove the copies."
        ),
        new(
            DefectKind.Crossing,
            Severity.Warning,
            "mesh-crossing",
            "pair of triangles crosses or overlaps",
            "pairs of triangles cross or overlap",
            "in the same place: inside and outside are not clear there",
            "Unite the bodies in the program that made them."
        ),
        new(
            DefectKind.Contact,
            Severity.Warning,
            "mesh-contact",
            "pair of triangles touches",
            "pairs of triangles touch",
            "without sharing a vertex: bodies in contact, or a vertex in the middle of another's edge",
            "Unite the bodies, move them apart, or export with matching vertices."
        ),
        new(
            DefectKind.InsideOutComponent,
            Severity.Error,
            "mesh-inside-out",
            "component is",
            "components are",
            "inside out: slicers may print the space round it or nothing",
            "Reverse its normals."
        ),
        new(
            DefectKind.NestedComponent,
            Severity.Warning,
            "mesh-nested-body",
            "body lies",
            "bodies lie",
            "inside another, both with the outside out: it may print solid or hollow",
            "Remove the inner body, or reverse its normals where it is to be a hollow."
        ),
    ];

    // More places than this in one sentence nobody reads; the finding holds more.
    private const int PlacesInWords = 3;

    internal static IReadOnlyList<Finding> Of(
        TopologyReport report,
        Func<Vector3D, string>? nameOf,
        Func<double, int?>? layerOf
    )
    {
        var findings = new List<Finding>();
        foreach (Wording wording in Wordings)
        {
            MeshDefect defect = report[wording.Kind];
            if (defect.Count > 0)
                findings.Add(
                    Defect(
                        wording,
                        defect.Count,
                        atLeast: report.PairsCapped && wording.Kind is (DefectKind.Crossing or DefectKind.Contact),
                        [
                            .. defect
                                .Places.Distinct()
                                .Select(p => new FindingPlace(
                                    p.X,
                                    p.Y,
                                    p.Z,
                                    nameOf?.Invoke(p) ?? "",
                                    layerOf?.Invoke(p.Z)
                                )),
                        ]
                    )
                );
        }
        int bodies = report.Components.Count(c => !c.IsCavity),
            cavities = report.Components.Count - bodies;
        if (bodies > 1)
            findings.Add(
                new("mesh-components", Severity.Note, "", $"The mesh consists of {bodies} separate bodies.", "")
                {
                    Value = bodies,
                }
            );
        if (cavities > 0)
            findings.Add(
                new(
                    "mesh-cavity",
                    Severity.Note,
                    "",
                    $"{cavities} closed {(cavities == 1 ? "hollow lies" : "hollows lie")} inside: resin in it "
                        + $"stays liquid.",
                    ""
                )
                {
                    Value = cavities,
                }
            );
        return [.. findings.OrderByDescending(f => f.Severity)];
    }

    private static Finding Defect(Wording wording, int count, bool atLeast, FindingPlace[] places)
    {
        string subject =
            count == 1 ? $"1 {wording.One}" : $"{count.ToString(CultureInfo.InvariantCulture)} {wording.Many}";
        string where = string.Join("; ", places.Take(PlacesInWords).Select(p => Words(p, places[0].Feature)));
        return new(
            wording.Rule,
            wording.Severity,
            places[0].Feature,
            $"{(atLeast ? "At least " : "")}{subject} {wording.Meaning}; {(count == 1 ? "at" : "first at")} {where}.",
            wording.Remedy
        )
        {
            Value = count,
            Limit = 0,
            Places = places,
        };
    }

    /// <summary>Without a minus before a zero.</summary>
    private static double Plain(double value) => Math.Round(value, 3) + 0.0;

    /// <summary>A place in words; the feature only where it is not the finding's subject.</summary>
    private static string Words(FindingPlace place, string subject)
    {
        string layer = place.Layer is { } number ? $", layer {number.ToString(CultureInfo.InvariantCulture)}" : "";
        string feature = place.Feature == subject || place.Feature.Length == 0 ? "" : $" ({place.Feature})";
        return string.Create(
            CultureInfo.InvariantCulture,
            $"x {Plain(place.X):0.###}, y {Plain(place.Y):0.###}, z {Plain(place.Z):0.###}{layer}{feature}"
        );
    }
}
