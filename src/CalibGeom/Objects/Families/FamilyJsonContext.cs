using System.Text.Json.Serialization;

namespace CalibGeom.Objects.Families;

/// <summary>Serialisers of rows, made when the library is compiled.</summary>
[JsonSerializable(typeof(FamilyRow))]
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, RespectNullableAnnotations = true)]
internal sealed partial class FamilyJsonContext : JsonSerializerContext;
