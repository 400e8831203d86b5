using CalibGeom.Verification.Readings;

namespace CalibGeom.Verification.Exposures;

/// <summary>A joint of the printed object: what it was designed for and how it felt. Immutable.</summary>
public sealed record JointOutcome
{
    /// <summary>A joint.</summary>
    /// <param name="id">Such as <c>joint1</c>.</param>
    /// <param name="designed">Designed clearance per side in mm, -1 to 2, positive = gap.</param>
    /// <param name="fit">How it felt, or null when it was not tried.</param>
    /// <exception cref="ArgumentException">The clearance is out of range, the id empty, or the fit undefined.</exception>
    public JointOutcome(string id, double designed, FeltFit? fit = null)
    {
        ArgumentException.ThrowIfNullOrEmpty(id);
        if (fit is { } felt && !Enum.IsDefined(felt)) throw new ArgumentException($"There is no fit {felt}.", nameof(fit));
        Id = id;
        Designed = Require.Within(designed, -1, 2, "designed clearance", "mm", nameof(designed));
        Fit = fit;
    }

    /// <summary>Such as <c>joint1</c>.</summary>
    public string Id { get; }

    /// <summary>Designed clearance per side in mm.</summary>
    public double Designed { get; }

    /// <summary>How it felt, or null.</summary>
    public FeltFit? Fit { get; }
}
