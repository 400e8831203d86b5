using System.Text.Json.Serialization;
using CalibGeom.Solids;

namespace CalibGeom.TestObjects.Specs;

/// <summary>Serialisers of specs, made when the library is compiled.</summary>
[JsonSerializable(typeof(TestObjectSpec))]
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    IgnoreReadOnlyProperties = true,
    Converters = [
        typeof(PerAxisConverter),
        typeof(PlateSizeConverter),
        typeof(ValueListConverter<double>),
        typeof(ValueListConverter<PerAxis>),
        typeof(WordConverter<PixelSnap>),
        typeof(WordConverter<TiltAxis>),
    ]
)]
[JsonSerializable(typeof(string))]
[JsonSerializable(typeof(double[]))]
[JsonSerializable(typeof(PerAxis[]))]
internal sealed partial class SpecJsonContext : JsonSerializerContext;
