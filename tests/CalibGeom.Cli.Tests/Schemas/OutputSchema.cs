using System.Collections.Concurrent;
using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;

namespace CalibGeom.Cli.Tests.Schemas;

/// <summary>The schemas of docs/schemas, against which every output with <c>--json</c> here is held.</summary>
internal static class OutputSchema
{
    private static readonly ConcurrentDictionary<string, JsonSchema> Known = new();

    private static readonly Lazy<string> FindingsPage = new(() =>
        File.ReadAllText(Path.Combine(Repository.Root, "docs", "findings.md")).ReplaceLineEndings("\n")
    );

    private static readonly EvaluationOptions Options = new() { OutputFormat = OutputFormat.List };

    /// <summary>Where the schemas stand.</summary>
    internal static string Folder { get; } = Path.Combine(Repository.Root, "docs", "schemas");

    /// <summary>The file of a command's schema.</summary>
    internal static string FileOf(string command) => command.Replace(' ', '-') + ".schema.json";

    /// <summary>Requires that an envelope is what the schema of its command says.</summary>
    internal static void Require(string text)
    {
        JsonNode envelope = JsonNode.Parse(text)!;
        RequireKnownIds(envelope["findings"]!.AsArray());
        string file = FileOf((string)envelope["command"]!);
        if (File.Exists(Path.Combine(Folder, file)))
            RequireValid(file, envelope);
        else
            Assert.True(envelope["result"] is null, $"There is no docs/schemas/{file}.");
    }

    /// <summary>Requires that the id of every finding stands on docs/findings.md.</summary>
    private static void RequireKnownIds(JsonArray findings) =>
        Assert.All(
            findings,
            finding =>
                Assert.Contains($"* `{(string)finding!["rule"]!}`\n", FindingsPage.Value, StringComparison.Ordinal)
        );

    /// <summary>Requires that a document is what a schema says.</summary>
    internal static void RequireValid(string file, JsonNode? document)
    {
        EvaluationResults results = Evaluate(file, document);
        Assert.True(
            results.IsValid,
            file
                + "\n"
                + string.Join(
                    '\n',
                    (results.Details ?? [])
                        .Where(d => d.Errors is { Count: > 0 })
                        .SelectMany(d => d.Errors!.Select(e => $"{d.InstanceLocation}: {e.Key} {e.Value}"))
                        .Take(12)
                )
        );
    }

    /// <summary>Whether a document is what a schema says.</summary>
    internal static bool IsValid(string file, JsonNode? document) => Evaluate(file, document).IsValid;

    private static EvaluationResults Evaluate(string file, JsonNode? document)
    {
        using var parsed = JsonDocument.Parse(document?.ToJsonString() ?? "null");
        return Known.GetOrAdd(file, Load).Evaluate(parsed.RootElement, Options);
    }

    private static JsonSchema Load(string file) => JsonSchema.FromText(Whole(file).ToJsonString());

    /// <summary>A schema with the files that it refers to in their places.</summary>
    private static JsonNode Whole(string file)
    {
        JsonObject schema = JsonNode.Parse(File.ReadAllText(Path.Combine(Folder, file)))!.AsObject();
        schema.Remove("$schema");
        return Inlined(schema)!;
    }

    private static JsonNode? Inlined(JsonNode? node) =>
        node switch
        {
            JsonObject o when o["$ref"] is JsonValue to => Whole((string)to!),
            JsonObject o => new JsonObject(o.Select(p => KeyValuePair.Create(p.Key, Inlined(p.Value)))),
            JsonArray a => new JsonArray(a.Select(Inlined).ToArray()),
            _ => node?.DeepClone(),
        };
}
