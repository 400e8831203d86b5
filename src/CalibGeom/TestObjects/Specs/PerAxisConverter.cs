using System.Text.Json;
using System.Text.Json.Serialization;

namespace CalibGeom.TestObjects.Specs;

/// <summary>A number, or <c>[x, y]</c>.</summary>
internal sealed class PerAxisConverter : JsonConverter<PerAxis>
{
    public override PerAxis Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
    {
        if (reader.TokenType == JsonTokenType.Number)
            return reader.GetDouble();
        return JsonSerializer.Deserialize(ref reader, SpecJsonContext.Default.DoubleArray) is [var x, var y]
            ? new PerAxis(x, y)
            : throw new JsonException("A number or [x, y] is needed.");
    }

    public override void Write(Utf8JsonWriter writer, PerAxis value, JsonSerializerOptions options)
    {
        if (value.IsUniform)
        {
            writer.WriteNumberValue(value.X);
            return;
        }
        writer.WriteStartArray();
        writer.WriteNumberValue(value.X);
        writer.WriteNumberValue(value.Y);
        writer.WriteEndArray();
    }
}
