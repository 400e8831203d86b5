using System.Text.Json.Serialization;

namespace CalibGeom.Objects;

/// <summary>Serialisers of object files, made when the library is compiled.</summary>
[JsonSerializable(typeof(ObjectDocument))]
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
    RespectNullableAnnotations = true,
    WriteIndented = true,
    NewLine = "\n"
)]
internal sealed partial class ObjectFileJsonContext : JsonSerializerContext;
