using System.Text.Json;
using System.Text.Json.Serialization;

namespace CalibGeom.Objects;

/// <summary>An object file as it stands on disk; every name is part of the format.</summary>
internal sealed class ObjectDocument
{
    [JsonRequired]
    public int Format { get; set; }

    [JsonRequired]
    public string Name { get; set; } = "";

    [JsonRequired]
    public string Digest { get; set; } = "";

    public string? Mesh { get; set; }

    [JsonRequired]
    public JsonElement Spec { get; set; }

    public List<CouponDocument>? Coupons { get; set; }

    public List<PartDocument>? Parts { get; set; }

    internal sealed class CouponDocument
    {
        public string? Label { get; set; }

        [JsonRequired]
        public double X { get; set; }

        [JsonRequired]
        public double Y { get; set; }

        public double Z { get; set; }

        public int Turn { get; set; }

        public double? Exposure { get; set; }
    }

    internal sealed class PartDocument
    {
        [JsonRequired]
        public string Name { get; set; } = "";

        [JsonRequired]
        public string Sha256 { get; set; } = "";
    }
}
