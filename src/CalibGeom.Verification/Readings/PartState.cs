namespace CalibGeom.Verification.Readings;

/// <summary>
/// What had been done to the part when it was measured. Sizes in different states are different quantities.
/// </summary>
public enum PartState
{
    /// <summary>Washed, maybe still swollen with solvent.</summary>
    Washed,

    /// <summary>Washed and dry, before post-cure.</summary>
    Dry,

    /// <summary>Post-cured.</summary>
    PostCured,
}
