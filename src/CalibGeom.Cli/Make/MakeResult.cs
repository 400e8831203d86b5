using System.Text.Json.Nodes;
using CalibGeom.Cli.Shared;
using CalibGeom.Meshes;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Cli.Make;

/// <summary>The result of <c>make</c> as JSON.</summary>
internal static class MakeResult
{
    internal static JsonObject Describe(SpecSource source, TestObject made, TriangleMesh? mesh, MakeFiles? files)
    {
        var result = new JsonObject
        {
            ["name"] = source.Name,
            ["digest"] = SpecDigest.Of(made.Spec),
            ["geometryVersion"] = ObjectHeader.GeometryVersion,
            ["files"] = List(files?.Paths ?? [], p => p),
            ["boxes"] = List(made.Boxes, Box),
            ["joints"] = List(made.Joints, Joint),
            ["columns"] = List(made.Columns, Column),
        };
        if (mesh is not null)
        {
            Measure(result, mesh);
            if (PrintEstimate.Of(made.Spec.Process, mesh.Bounds.Size.Z) is { } print)
                result["print"] = print.ToJson();
        }
        result["spec"] = JsonNode.Parse(SpecJson.ToCanonicalBytes(made.Spec));
        result["features"] = JsonNode.Parse(FeatureTableJson.ToText(made.Features))!["features"]!.DeepClone();
        result["caution"] = Caution.Text;
        return result;
    }

    private static void Measure(JsonObject result, TriangleMesh mesh)
    {
        result["triangles"] = mesh.TriangleCount;
        result["components"] = mesh.ComponentCount;
        result["eulerCharacteristic"] = mesh.EulerCharacteristic;
        result["volume"] = mesh.Volume;
        result["area"] = mesh.Area;
        result["boundingBox"] = new JsonObject { ["min"] = Point(mesh.Bounds.Min), ["max"] = Point(mesh.Bounds.Max) };
    }

    private static JsonObject Box(BoxPlan box) =>
        new()
        {
            ["number"] = box.Number,
            ["wanted"] = box.WantedOutside,
            ["outside"] = Pair(box.Outside),
            ["inside"] = Pair(box.Inside),
            ["attached"] = box.Attached,
        };

    private static JsonObject Joint(JointPlan joint) =>
        new()
        {
            ["number"] = joint.Number,
            ["wanted"] = Pair(joint.WantedClearance),
            ["clearance"] = Pair(joint.Clearance),
        };

    private static JsonObject Column(ColumnPlan column) =>
        new()
        {
            ["number"] = column.Number,
            ["diameter"] = column.Diameter,
            ["loadRatio"] = column.LoadRatio,
            ["x"] = column.X,
            ["y"] = column.Y,
        };

    private static JsonArray Pair(PerAxis value) => new(value.X, value.Y);

    private static JsonArray Point(Vector3D p) => new(p.X, p.Y, p.Z);

    private static JsonArray List<T>(IEnumerable<T> items, Func<T, JsonNode?> describe) =>
        new(items.Select(describe).ToArray());
}
