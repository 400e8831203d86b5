using CalibGeom.TestObjects.Parts;

namespace CalibGeom.TestObjects.Rules;

/// <summary>All design rules.</summary>
internal static class DesignRules
{
    private static readonly IDesignRule[] All =
    [
        new AscendingSizesRule(),
        new WallRule(),
        new GapRule(),
        new PocketRule(),
        new VentRule(),
        new SeatRule(),
        new NeckRule(),
        new CaliperLaneRule(),
        new ColumnRoomRule(),
        new ColumnLoadRule(),
        new OverhangRule(),
        new LabelRule(),
        new TiltRule(),
        new PlateRule(),
        new BaseLayersRule(),
        new PixelRule(),
        new LayerRule(),
    ];

    /// <summary>What the rules find, errors first, then in the order of the rules.</summary>
    internal static IReadOnlyList<Finding> Check(ObjectPlan plan) =>
        [.. All.SelectMany(r => r.Check(plan)).OrderByDescending(f => f.Severity)];
}
