using System.Runtime.InteropServices;
using System.Text.Json.Nodes;
using CalibGeom.Meshes;
using CalibGeom.Pictures.Objects;

namespace CalibGeom.Pictures.BenchSheet;

/// <summary>
/// The object for the sheet's 3D view: corners on a grid of 65,536 steps, which is finer than any screen, and for each
/// triangle the part it belongs to.
/// </summary>
internal static class SheetMesh
{
    internal static JsonObject Of(ObjectParts parts)
    {
        TriangleMesh mesh = parts.Mesh;
        double[] min = [double.MaxValue, double.MaxValue, double.MaxValue],
            max = [double.MinValue, double.MinValue, double.MinValue];
        for (int i = 0; i < mesh.Coordinates.Length; i++)
        {
            min[i % 3] = Math.Min(min[i % 3], mesh.Coordinates[i]);
            max[i % 3] = Math.Max(max[i % 3], mesh.Coordinates[i]);
        }
        double step = Enumerable.Range(0, 3).Max(k => max[k] - min[k]) / ushort.MaxValue;
        var vertices = new ushort[mesh.Coordinates.Length];
        for (int i = 0; i < vertices.Length; i++)
            vertices[i] = (ushort)Math.Round((mesh.Coordinates[i] - min[i % 3]) / step);
        string[] names = [.. Enumerable.Range(0, mesh.TriangleCount).Select(parts.NameOf).Distinct().Take(256)];
        byte[] partOf =
        [
            .. Enumerable
                .Range(0, mesh.TriangleCount)
                .Select(t => (byte)Math.Max(0, Array.IndexOf(names, parts.NameOf(t)))),
        ];
        bool small = mesh.VertexCount <= ushort.MaxValue;
        return new JsonObject
        {
            ["min"] = new JsonArray([.. min.Select(v => (JsonNode)Math.Round(v, 4))]),
            ["max"] = new JsonArray([.. max.Select(v => (JsonNode)Math.Round(v, 4))]),
            ["step"] = step,
            ["vertices"] = Base64<ushort>(vertices),
            ["vertices16"] = small,
            ["triangles"] = small
                ? Base64<ushort>([.. mesh.Triangles.ToArray().Select(c => (ushort)c)])
                : Base64<int>(mesh.Triangles),
            ["parts"] = new JsonArray([.. names.Select(n => (JsonNode)n)]),
            ["partOf"] = Convert.ToBase64String(partOf),
        };
    }

    /// <summary>Little-endian, as browsers read typed arrays on every machine in use.</summary>
    private static string Base64<T>(ReadOnlySpan<T> values)
        where T : struct => Convert.ToBase64String(MemoryMarshal.AsBytes(values));
}
