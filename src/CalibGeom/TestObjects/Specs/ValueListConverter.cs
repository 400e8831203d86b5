using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;

namespace CalibGeom.TestObjects.Specs;

/// <summary>A list of entries.</summary>
internal sealed class ValueListConverter<T> : JsonConverter<ValueList<T>>
    where T : IEquatable<T>
{
    public override ValueList<T> Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        (
            JsonSerializer.Deserialize(ref reader, ArrayInfo(options)) ?? throw new JsonException("A list is needed.")
        ).ToValueList();

    public override void Write(Utf8JsonWriter writer, ValueList<T> value, JsonSerializerOptions options) =>
        JsonSerializer.Serialize(writer, value.ToArray(), ArrayInfo(options));

    private static JsonTypeInfo<T[]> ArrayInfo(JsonSerializerOptions options) =>
        (JsonTypeInfo<T[]>)options.GetTypeInfo(typeof(T[]));
}
