using CalibGeom.Verification.Readings;

namespace CalibGeom.Verification.Logs;

/// <summary>A joint of the printed object: what it was designed for and how it felt. Immutable.</summary>
public sealed record JointOutcome
{
    /// <summary>A joint.</summary>
    /// <param name="id">Such as <c>joint1</c>.</param>
    /// <param name="designed">Designed clearance per side in mm, -1 to 2, positive = gap.</param>
    /// <param name="fit">How it felt, or null when it was not tried.</param>
    /// <param name="designedY">Designed clearance per side along Y in mm where it differs from that along X, -1 to 2;
    /// null when it does not.</param>
    /// <exception cref="ArgumentException">The clearance is out of range, the id empty, or the fit
    /// undefined.</exception>
    public JointOutcome(string id, double designed, FeltFit? fit = null, double? designedY = null)
    {
        ArgumentException.ThrowIfNullOrEmpty(id);
        if (fit is { } felt && !Enum.IsDefined(felt))
            throw new ArgumentException($"There is no fit {felt}.", nameof(fit));
        Id = id;
        Designed = Require.Within(designed, -1, 2, "designed clearance", "mm", nameof(designed));
        DesignedY = designedY is { } y
            ? Require.Within(y, -1, 2, "designed clearance", "mm", nameof(designedY))
            : Designed;
        Fit = fit;
    }

    /// <summary>Such as <c>joint1</c>.</summary>
    public string Id { get; }

    /// <summary>
    /// Designed clearance per side along X in mm, and along Y unless <see cref="DesignedY"/> differs.
    /// </summary>
    public double Designed { get; }

    /// <summary>Designed clearance per side along Y in mm.</summary>
    public double DesignedY { get; }

    /// <summary>How it felt, or null.</summary>
    public FeltFit? Fit { get; }
}
