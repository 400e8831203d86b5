using System.Text.Json.Serialization;

namespace CalibGeom.Verification.Logs;

/// <summary>Serialisers of a log's lines, made when the library is compiled.</summary>
[JsonSerializable(typeof(TrialDocument))]
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    RespectNullableAnnotations = true,
    MaxDepth = 16,
    AllowDuplicateProperties = false
)]
internal sealed partial class TrialJsonContext : JsonSerializerContext;
