using System.Globalization;
using System.Text.Json.Nodes;
using CalibGeom.Cli.Shared;
using CalibGeom.Inspection;
using CalibGeom.Inspection.Layers;
using CalibGeom.Inspection.Topology;

namespace CalibGeom.Cli.Inspect;

/// <summary>The answer of <c>inspect</c>: verdict first.</summary>
internal static class InspectText
{
    internal static string Verdict(Inspected one) =>
        one.Report.Verdict switch
        {
            MeshVerdict.Failing => "will not print as it is",
            MeshVerdict.Doubtful => "may not print well",
            _ => "ready to print",
        };

    internal static void Write(TextWriter writer, Inspected one)
    {
        int errors = one.Report.Findings.Count(f => f.Severity == Severity.Error),
            warnings = one.Report.Findings.Count(f => f.Severity == Severity.Warning);
        int notes = one.Report.Findings.Count - errors - warnings;
        writer.WriteLine(
            $"{one.Path}: {Verdict(one)} ({Count(errors, "error")}, {Count(warnings, "warning")}, "
                + $"{Count(notes, "note")})"
        );
        writer.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"  {Count(one.Report.Topology.TriangleCount, "triangle")}, "
                    + $"{Count(one.Report.Topology.Components.Count, "component")}, {Volume(one.Report)}, "
                    + $"surface {Size(one.Report.Topology.Area)} mm2"
            )
        );
        if (one.Report.Layers.Largest is { } largest)
        {
            string step =
                one.Report.Layers.LargestStep > 0
                    ? FormattableString.Invariant(
                        $"largest step {Size(one.Report.Layers.LargestStep)} mm2 at layer {one.Report.Layers.LargestStepLayer}"
                    )
                    : "never growing";
            writer.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"  {Count(one.Report.Layers.Layers.Count, "layer")} of {one.Report.Layers.Settings.LayerHeight} mm; "
                        + $"largest area {Size(largest.Area)} mm2 in layer {largest.Index}, {step}"
                )
            );
            writer.WriteLine(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"  peel force at most {one.Report.Layers.RelativePeelForce:0.##} times that of the mean layer "
                        + $"(taken as proportional to area)"
                )
            );
        }
        if (one.Compared && one.Report.Findings.All(f => f.Rule != "spec-size"))
            writer.WriteLine("  has the sizes of the spec");
        FindingText.Write(writer, RemediesOnce(one.Report.Findings));
    }

    /// <summary>The volume; where bodies share room, also what the layers hold of it, where room counts once.</summary>
    private static string Volume(MeshReport report)
    {
        string volume = $"volume {Size(report.Topology.Volume)} mm3";
        if (report.Topology[DefectKind.Crossing].Count + report.Topology[DefectKind.DuplicateTriangle].Count == 0)
            return volume;
        return $"{volume} with what bodies share counted for each ({Size(report.Layers.Volume)} mm3 in the layers)";
    }

    /// <summary>The same remedy, said once, serves all findings that follow it.</summary>
    private static IEnumerable<Finding> RemediesOnce(IEnumerable<Finding> findings)
    {
        var said = new HashSet<(string, string)>();
        foreach (Finding f in findings)
            yield return said.Add((f.Rule, f.Remedy)) ? f : f with { Remedy = "" };
    }

    /// <summary>Two decimals; up to five where they would show next to nothing. Never a minus before a zero.</summary>
    private static string Size(double value) =>
        (Math.Round(value, 5) + 0.0).ToString(Math.Abs(value) < 0.1 ? "0.#####" : "0.##", CultureInfo.InvariantCulture);

    /// <summary>Without digits that are rounding alone.</summary>
    private static double Plain(double value) => Math.Round(value, 6) + 0.0;

    private static string Count(int number, string noun) =>
        FormattableString.Invariant($"{number} {noun}{(number == 1 ? "" : "s")}");

    internal static JsonNode Describe(Inspected one) =>
        new JsonObject
        {
            ["file"] = one.Path,
            ["verdict"] = Verdict(one),
            ["triangles"] = one.Report.Topology.TriangleCount,
            ["components"] = one.Report.Topology.Components.Count,
            ["volume"] = Plain(one.Report.Topology.Volume),
            ["surface"] = Plain(one.Report.Topology.Area),
            ["largestStep"] = Plain(one.Report.Layers.LargestStep),
            ["largestStepLayer"] = one.Report.Layers.LargestStepLayer,
            ["relativePeelForce"] = Plain(one.Report.Layers.RelativePeelForce),
            ["layers"] = new JsonArray(one.Report.Layers.Layers.Select(Describe).ToArray()),
        };

    private static JsonNode Describe(LayerSummary layer) =>
        new JsonObject
        {
            ["z"] = Plain(layer.Z),
            ["area"] = Plain(layer.Area),
            ["min"] = new JsonArray(Plain(layer.Min.X), Plain(layer.Min.Y)),
            ["max"] = new JsonArray(Plain(layer.Max.X), Plain(layer.Max.Y)),
        };
}
