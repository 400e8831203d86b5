using System.Text.Json;
using System.Text.Json.Serialization;

namespace CalibGeom.Verification.Readings;

/// <summary>Serialisers of readings, made when the library is compiled.</summary>
[JsonSerializable(typeof(ReadingsDocument))]
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    NumberHandling = JsonNumberHandling.Strict,
    UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    AllowDuplicateProperties = false,
    ReadCommentHandling = JsonCommentHandling.Skip
)]
internal sealed partial class ReadingsJsonContext : JsonSerializerContext;
