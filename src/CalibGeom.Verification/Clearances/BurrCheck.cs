namespace CalibGeom.Verification.Clearances;

/// <summary>What the readings say of burrs or raised corners on the outside of boxes, all alike. Immutable.</summary>
public sealed record BurrCheck
{
    /// <summary>Share of the prior variance that readings took away from which burr and growth can be told.</summary>
    internal const double Enough = 0.5;

    /// <summary>
    /// What burrs add to an outside width, mm; the part of it that is estimated is already in the answer.
    /// </summary>
    public required Estimate Height { get; init; }

    /// <summary>How far readings tell a burr from growth: 0 not at all, 1 exactly.</summary>
    public required double Told { get; init; }

    /// <summary>One-sided probability of a burr as high by chance when there is none; 0.5 when nothing tells.</summary>
    public required double Probability { get; init; }

    /// <summary>Whether spans or readings marked "middle" tell a burr from growth.</summary>
    public bool CanTell => Told >= Enough;

    /// <summary>Whether a burr stands out.</summary>
    public bool Seen => Told > 0 && Probability < ModelCheck.Least;
}
