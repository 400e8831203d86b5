namespace CalibGeom.Verification.Readings;

/// <summary>Whether a part's material gives under the jaws of a caliper.</summary>
public enum Material
{
    /// <summary>No fingernail dents it and no wall bends under light jaws.</summary>
    Rigid,

    /// <summary>It gives: jaws press it in.</summary>
    Flexible,
}
