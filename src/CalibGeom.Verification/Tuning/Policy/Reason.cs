namespace CalibGeom.Verification.Tuning.Policy;

/// <summary>The one reason of an order.</summary>
public enum Reason
{
    /// <summary>Nothing came off the plate: double the light.</summary>
    NothingPrinted,

    /// <summary>One exposure cures too few layers.</summary>
    Layers,

    /// <summary>The wanted column does not stand.</summary>
    WantedColumn,

    /// <summary>More light still saves columns and is allowed.</summary>
    Columns,

    /// <summary>Print-through is beyond its limit.</summary>
    PrintThrough,

    /// <summary>Exposure trims the clearance, because an offset cannot.</summary>
    Trim,

    /// <summary>Rest draws edges back and is worth its time.</summary>
    Rest,

    /// <summary>The edge offset takes up what is left.</summary>
    Offset,

    /// <summary>One print, or too few, have shown these settings.</summary>
    Confirm,

    /// <summary>The last print is off by itself where all before it were settled.</summary>
    Doubt,

    /// <summary>Another print would change nothing that could be seen.</summary>
    Settled,
}
