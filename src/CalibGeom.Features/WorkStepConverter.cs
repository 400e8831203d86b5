using System.Text.Json;
using System.Text.Json.Serialization;

namespace CalibGeom.Features;

/// <summary>A step of the work at the bench, as a word.</summary>
internal sealed class WorkStepConverter()
    : JsonStringEnumConverter<WorkStep>(JsonNamingPolicy.CamelCase, allowIntegerValues: false);
