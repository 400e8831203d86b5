namespace CalibGeom.Verification.Clearances;

/// <summary>How coverage intervals are found.</summary>
public enum Route
{
    /// <summary>Law of propagation of uncertainty with Student's t (JCGM 100).</summary>
    FirstOrder,

    /// <summary>Propagation of distributions (JCGM 101): narrower where a rectangular error dominates.</summary>
    MonteCarlo,
}
