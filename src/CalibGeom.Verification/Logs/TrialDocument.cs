using System.Text.Json.Serialization;

namespace CalibGeom.Verification.Logs;

/// <summary>A trial as it stands in the log; every name is part of the format.</summary>
internal sealed class TrialDocument
{
    public string? Date { get; set; }

    public string? Digest { get; set; }

    public PlaceDocument? Place { get; set; }

    public int? LayersSince { get; set; }

    public double? HoursSince { get; set; }

    [JsonRequired]
    public double Time { get; set; }

    public double Rest { get; set; }

    public double EdgeOffset { get; set; }

    [JsonRequired]
    public double Layer { get; set; }

    public int BaseLayers { get; set; } = ProcessDefaults.BaseLayers;

    public double BaseTime { get; set; } = ProcessDefaults.BaseTime;

    public double Lift { get; set; } = 7;

    public double? TemperatureStart { get; set; }

    public double? TemperatureEnd { get; set; }

    public string Resin { get; set; } = "";

    public string Printer { get; set; } = "";

    public string? Bottle { get; set; }

    public string? Film { get; set; }

    public string? Screen { get; set; }

    public string State { get; set; } = "dry";

    public bool GreyLevels { get; set; }

    public int Orientation { get; set; }

    public string Instrument { get; set; } = "";

    public GrowthDocument? GrowthX { get; set; }

    public GrowthDocument? GrowthY { get; set; }

    public double? SlicerScaleX { get; set; }

    public double? SlicerScaleY { get; set; }

    public double? PixelX { get; set; }

    public double? PixelY { get; set; }

    public ScaleDocument? ScaleX { get; set; }

    public ScaleDocument? ScaleY { get; set; }

    public List<JointDocument> Joints { get; set; } = [];

    public List<ColumnDocument> Columns { get; set; } = [];

    public SlotDocument? Slots { get; set; }

    public Dictionary<string, List<double>> Readings { get; set; } = [];

    public Dictionary<string, double>? Nominals { get; set; }

    internal sealed class PlaceDocument
    {
        public string? Label { get; set; }

        [JsonRequired]
        public double X { get; set; }

        [JsonRequired]
        public double Y { get; set; }

        public int Turn { get; set; }
    }

    internal sealed class GrowthDocument
    {
        [JsonRequired]
        public double Value { get; set; }

        [JsonRequired]
        public double Uncertainty { get; set; }

        public double Bias { get; set; }
    }

    internal sealed class ScaleDocument
    {
        [JsonRequired]
        public double Value { get; set; }

        [JsonRequired]
        public double Uncertainty { get; set; }
    }

    internal sealed class JointDocument
    {
        [JsonRequired]
        public string Id { get; set; } = "";

        [JsonRequired]
        public double Designed { get; set; }

        public double? DesignedY { get; set; }

        public string? Fit { get; set; }
    }

    internal sealed class ColumnDocument
    {
        public string Id { get; set; } = "";

        [JsonRequired]
        public double Diameter { get; set; }

        public double HeadDiameter { get; set; }

        [JsonRequired]
        public string Stood { get; set; } = "";
    }

    internal sealed class SlotDocument
    {
        [JsonRequired]
        public List<double> Heights { get; set; } = [];

        [JsonRequired]
        public int Open { get; set; }
    }
}
