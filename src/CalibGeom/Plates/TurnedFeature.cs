namespace CalibGeom.Plates;

/// <summary>A feature of a coupon in the printer's axes.</summary>
internal static class TurnedFeature
{
    internal static Feature Of(Feature own, int turn)
    {
        if (turn == 0)
            return own;
        string how =
            own.Axis is "x" or "y" || own.Spot is not null
                ? $"{own.How} (turned: its arrow points along the printer's Y)"
                : own.How;
        return new Feature(Turned(own.Id), own.Nominal, own.Unit, Swap(own.Axis), how)
        {
            Faces = own.Faces,
            Step = own.Step,
            Mates = own
                .Mates.Select(m => m with { Axis = Swap(m.Axis), Inner = Turned(m.Inner), Outer = Turned(m.Outer) })
                .ToValueList(),
            HeadDiameter = own.HeadDiameter,
            Openings = own.Openings,
            Spot = own.Spot,
        };
    }

    private static FeatureId Turned(FeatureId id) => id.With(id.Size, Swap(id.Axis));

    private static string Swap(string axis) =>
        axis switch
        {
            "x" => "y",
            "y" => "x",
            _ => axis,
        };
}
