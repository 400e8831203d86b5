namespace CalibGeom.Verification.Readings;

/// <summary>What kind of value a reading holds; it follows from the end of the feature id.</summary>
public enum ReadingKind
{
    /// <summary>A size in mm.</summary>
    Size,

    /// <summary>A whole number (<c>slots.open</c>, <c>squeeze.open</c>).</summary>
    Count,

    /// <summary>The last stage at which a column stood (<c>columnN.stood</c>).</summary>
    Stage,

    /// <summary>A felt fit (<c>jointN.fit</c>).</summary>
    Fit,
}
