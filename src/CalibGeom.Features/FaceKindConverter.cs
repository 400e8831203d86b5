using System.Text.Json;
using System.Text.Json.Serialization;

namespace CalibGeom.Features;

/// <summary>How faces answer to growth, as a word.</summary>
internal sealed class FaceKindConverter()
    : JsonStringEnumConverter<FaceKind>(JsonNamingPolicy.CamelCase, allowIntegerValues: false);
