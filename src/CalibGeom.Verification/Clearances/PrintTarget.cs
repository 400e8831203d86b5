namespace CalibGeom.Verification.Clearances;

/// <summary>Of which print a quantity is asked.</summary>
internal enum PrintTarget
{
    /// <summary>The one that was read; the mean when there were several.</summary>
    Read,

    /// <summary>The mean of all prints at these settings.</summary>
    Mean,

    /// <summary>The next one.</summary>
    Next,
}
