namespace CalibGeom.Verification.Trends;

/// <summary>What a series of coupons says.</summary>
public enum TrendVerdict
{
    /// <summary>Nothing is seen to have moved; the answer says what would have been seen.</summary>
    NotSeenToMove,

    /// <summary>Something moves, rather than chance, but parts are rather still within the tolerance.</summary>
    Drifting,

    /// <summary>
    /// What has moved is rather out of the tolerance than not, chance counted in, or something changed that calls for a
    /// new calibration.
    /// </summary>
    Recalibrate,

    /// <summary>The coupons cannot tell yet; the answer says how many more would.</summary>
    NotEnoughData,
}
