using System.Text.Json.Nodes;
using CalibGeom.TestObjects.Parts.PinRow;
using CalibGeom.TestObjects.Parts.WallFan;

namespace CalibGeom.TestObjects.Specs;

/// <summary>Defaults as JSON, taken from the records themselves.</summary>
internal static class SpecDefaults
{
    private static readonly Lazy<JsonObject> Whole = new(() =>
        SpecJson.ToNode(
            new TestObjectSpec
            {
                Process = new ProcessSpec(),
                Pins = new PinSpec(),
                Walls = new WallSpec(),
            }
        )
    );

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
