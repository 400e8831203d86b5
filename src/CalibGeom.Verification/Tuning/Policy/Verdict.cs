namespace CalibGeom.Verification.Tuning.Policy;

/// <summary>The one verdict on the clearance of the last settings.</summary>
public enum Verdict
{
    /// <summary>Nothing measured or felt: nothing can be said of clearances.</summary>
    NotKnown,

    /// <summary>Within the tolerance with the probability asked for.</summary>
    OnTarget,

    /// <summary>Tighter than the tolerance allows, with that probability.</summary>
    Tight,

    /// <summary>Looser than the tolerance allows, with that probability.</summary>
    Loose,

    /// <summary>None of these with that probability.</summary>
    CannotBeToldYet,
}
