using System.Text.Json;
using System.Text.Json.Serialization;

namespace CalibGeom.TestObjects.Specs;

/// <summary><c>[x, y, z]</c>.</summary>
internal sealed class PlateSizeConverter : JsonConverter<PlateSize>
{
    public override PlateSize Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        JsonSerializer.Deserialize(ref reader, SpecJsonContext.Default.DoubleArray) is [var x, var y, var z]
            ? new PlateSize(x, y, z)
            : throw new JsonException("[x, y, z] is needed.");

    public override void Write(Utf8JsonWriter writer, PlateSize value, JsonSerializerOptions options)
    {
        writer.WriteStartArray();
        writer.WriteNumberValue(value.X);
        writer.WriteNumberValue(value.Y);
        writer.WriteNumberValue(value.Z);
        writer.WriteEndArray();
    }
}
