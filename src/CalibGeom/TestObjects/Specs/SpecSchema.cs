using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace CalibGeom.TestObjects.Specs;

/// <summary>A JSON Schema (draft 2020-12) of specs, for editors that check and complete as one types.</summary>
public static class SpecSchema
{
    private static readonly JsonWriterOptions Layout = new()
    {
        Indented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>
    /// The schema as text. What depends on two values at once (as many clearances as joints, the chamfer lower than the
    /// plinth) is not in it.
    /// </summary>
    public static string ToText()
    {
        using var bytes = new MemoryStream();
        using (var writer = new Utf8JsonWriter(bytes, Layout))
            Whole().WriteTo(writer);
        return Encoding.UTF8.GetString(bytes.ToArray()) + "\n";
    }

    private static JsonObject Whole()
    {
        var properties = new JsonObject
        {
            ["$schema"] = Of("string"),
            [SpecParameters.Title.Name] = Describe(SpecParameters.Title),
        };
        foreach (SpecGroup group in SpecParameters.Groups)
            properties[group.Name] = Describe(group);
        return new JsonObject
        {
            ["$schema"] = "https://json-schema.org/draft/2020-12/schema",
            ["title"] = "Test object spec",
            ["description"] =
                "What a test object for a resin printer is to be. Lengths in mm, angles in degrees. Every name "
                + "is optional.",
            ["type"] = "object",
            ["additionalProperties"] = false,
            ["properties"] = properties,
        };
    }

    private static JsonObject Describe(SpecGroup group)
    {
        var properties = new JsonObject();
        foreach (SpecParameter parameter in group.Parameters)
            properties[parameter.Name] = Describe(parameter);
        return new JsonObject
        {
            ["description"] = group.Optional ? $"{group.Meaning} null leaves it out." : group.Meaning,
            ["type"] = group.Optional ? new JsonArray("object", "null") : "object",
            ["additionalProperties"] = false,
            ["properties"] = properties,
        };
    }

    private static JsonObject Describe(SpecParameter parameter)
    {
        JsonObject shape = Shape(parameter);
        shape["description"] = parameter.Sentences;
        shape["default"] = SpecDefaults.Of(parameter);
        return shape;
    }

    private static JsonObject Shape(SpecParameter parameter) =>
        parameter.Kind switch
        {
            SpecKind.Text => new JsonObject
            {
                ["type"] = "string",
                ["maxLength"] = parameter.MostEntries,
                ["pattern"] = SpecText.Pattern,
            },
            SpecKind.Word => new JsonObject
            {
                ["enum"] = new JsonArray(parameter.Words.Select(w => (JsonNode)w).ToArray()),
            },
            SpecKind.Count => Number(parameter, "integer"),
            SpecKind.Number => Number(parameter, "number"),
            SpecKind.Numbers => List(Number(parameter, "number"), parameter.FewestEntries, parameter.MostEntries),
            SpecKind.PerAxis => NumberOrPair(parameter),
            SpecKind.PerAxisList => List(NumberOrPair(parameter), parameter.FewestEntries, parameter.MostEntries),
            _ => List(Number(parameter, "number"), 3, 3),
        };

    private static JsonObject Of(string type) => new() { ["type"] = type };

    private static JsonObject Number(SpecParameter parameter, string type) =>
        new()
        {
            ["type"] = type,
            ["minimum"] = parameter.Minimum,
            ["maximum"] = parameter.Maximum,
        };

    private static JsonObject List(JsonObject items, int fewest, int most) =>
        new()
        {
            ["type"] = "array",
            ["items"] = items,
            ["minItems"] = fewest,
            ["maxItems"] = most,
        };

    private static JsonObject NumberOrPair(SpecParameter parameter) =>
        new() { ["anyOf"] = new JsonArray(Number(parameter, "number"), List(Number(parameter, "number"), 2, 2)) };
}
