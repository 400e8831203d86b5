using System.Text.Json;
using System.Text.Json.Serialization;

namespace CalibGeom.TestObjects.Specs;

/// <summary>A value of an enumeration as its name in lower case.</summary>
internal sealed class WordConverter<T>()
    : JsonStringEnumConverter<T>(JsonNamingPolicy.CamelCase, allowIntegerValues: false)
    where T : struct, Enum;
