namespace CalibGeom.Verification.Readings;

/// <summary>The last stage at which a column still stood.</summary>
public enum ColumnStage
{
    /// <summary>Lost while printing.</summary>
    Lost,

    /// <summary>Stood on the build plate after printing, lost in the wash.</summary>
    Plate,

    /// <summary>Stood after the wash, lost in drying or post-cure.</summary>
    Wash,

    /// <summary>Stood after post-cure.</summary>
    Cure,
}
