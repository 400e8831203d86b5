using System.Reflection;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace CalibGeom.Cli.Shared;

/// <summary>The one shape of all <c>--json</c> output: command, version, findings, result.</summary>
internal static class Envelope
{
    private static readonly JsonSerializerOptions Layout = new()
    {
        WriteIndented = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>The version of this tool.</summary>
    internal static string Version { get; } =
        typeof(Envelope)
            .Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()!
            .InformationalVersion.Split('+')[0];

    internal static void Write(TextWriter writer, string command, IEnumerable<Finding> findings, JsonNode? result) =>
        WriteFiles(writer, command, findings.Select(f => new FileFinding(null, f)), result);

    /// <summary>The same with findings that say which file they are about.</summary>
    internal static void WriteFiles(
        TextWriter writer,
        string command,
        IEnumerable<FileFinding> findings,
        JsonNode? result
    )
    {
        var envelope = new JsonObject
        {
            ["command"] = command,
            ["version"] = Version,
            ["findings"] = new JsonArray(findings.Select(Describe).ToArray()),
            ["result"] = PlainNumbers.Of(result),
        };
        writer.WriteLine(envelope.ToJsonString(Layout));
    }

    private static JsonNode? Describe(FileFinding of)
    {
        Finding finding = of.Finding;
        var node = new JsonObject
        {
            ["rule"] = finding.Rule,
            ["severity"] = FindingText.Word(finding.Severity),
            ["subject"] = finding.Subject,
            ["message"] = finding.Message,
            ["remedy"] = finding.Remedy,
        };
        if (finding.Axis.Length > 0)
            node["axis"] = finding.Axis;
        if (of.File is { } file)
            node["file"] = file;
        if (finding.Value is { } value)
            node["value"] = PlainNumbers.Of(value);
        if (finding.Limit is { } limit)
            node["limit"] = PlainNumbers.Of(limit);
        if (finding.Unit.Length > 0)
            node["unit"] = finding.Unit;
        if (finding.Places.Count > 0)
            node["places"] = new JsonArray(finding.Places.Select(Describe).ToArray());
        return node;
    }

    private static JsonNode? Describe(FindingPlace place)
    {
        var node = new JsonObject
        {
            ["x"] = PlainNumbers.Of(place.X),
            ["y"] = PlainNumbers.Of(place.Y),
            ["z"] = PlainNumbers.Of(place.Z),
        };
        if (place.Layer is { } layer)
            node["layer"] = layer;
        if (place.LastLayer is { } last)
            node["lastLayer"] = last;
        if (place.Feature.Length > 0)
            node["feature"] = place.Feature;
        return node;
    }
}
