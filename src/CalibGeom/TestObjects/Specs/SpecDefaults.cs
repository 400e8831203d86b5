using System.Text.Json.Nodes;

namespace CalibGeom.TestObjects.Specs;

/// <summary>Defaults as JSON, taken from the records themselves.</summary>
internal static class SpecDefaults
{
    private static readonly Lazy<JsonObject> Whole = new(() =>
    {
        JsonObject node = SpecJson.ToNode(new TestObjectSpec());
        foreach (SpecGroup group in SpecParameters.Groups)
            node[group.Name] ??= SpecJson.ToNode(group.Basis());
        return node;
    });

    /// <summary>A group with all its defaults; a copy.</summary>
    internal static JsonObject Of(string group)
    {
        lock (Whole)
            return Whole.Value[group]!.DeepClone().AsObject();
    }

    /// <summary>The default of a parameter; a copy.</summary>
    internal static JsonNode Of(SpecParameter parameter) =>
        parameter.Group.Length == 0
            ? JsonValue.Create(new TestObjectSpec().Title)
            : Of(parameter.Group)[parameter.Name]!.DeepClone();
}
