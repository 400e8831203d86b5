namespace CalibGeom.Verification.Trends;

/// <summary>What a witness coupon is read for.</summary>
public enum Gauge
{
    /// <summary>Growth per edge along one axis, mm.</summary>
    Growth,

    /// <summary>Print-through from the slot comb or from the bridge, mm.</summary>
    PrintThrough,

    /// <summary>Natural logarithm of the diameter in mm of the thinnest column that prints.</summary>
    Columns,
}
