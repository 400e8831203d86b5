using System.Text.Json;
using System.Text.Json.Serialization;

namespace CalibGeom.Features;

/// <summary>Serialisers of feature tables, made when the library is compiled.</summary>
[JsonSerializable(typeof(FeatureTableDocument))]
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    RespectNullableAnnotations = true,
    Converters = [typeof(FaceKindConverter), typeof(WorkStepConverter)],
    WriteIndented = true,
    NewLine = "\n",
    ReadCommentHandling = JsonCommentHandling.Skip,
    AllowTrailingCommas = true
)]
internal sealed partial class FeatureTableJsonContext : JsonSerializerContext;
