using CalibGeom.Verification.Readings;

namespace CalibGeom.Verification.Logs;

/// <summary>What became of one thin column. Immutable.</summary>
public sealed record ColumnOutcome
{
    /// <summary>A column.</summary>
    /// <param name="diameter">Designed diameter in mm, above 0 and at most 20.</param>
    /// <param name="stood">The last stage at which it stood.</param>
    /// <param name="id">Such as <c>column7</c>, or empty.</param>
    /// <param name="headDiameter">Diameter of its head in mm, 0 when it has none, at most 50.</param>
    /// <exception cref="ArgumentException">A value is out of range.</exception>
    public ColumnOutcome(double diameter, ColumnStage stood, string id = "", double headDiameter = 0)
    {
        ArgumentNullException.ThrowIfNull(id);
        if (!Enum.IsDefined(stood))
            throw new ArgumentException($"There is no stage {stood}.", nameof(stood));
        Diameter = Require.Positive(diameter, 20, "column diameter", "mm", nameof(diameter));
        HeadDiameter = Require.Within(headDiameter, 0, 50, "head diameter", "mm", nameof(headDiameter));
        Stood = stood;
        Id = id;
    }

    /// <summary>Designed diameter in mm.</summary>
    public double Diameter { get; }

    /// <summary>The last stage at which it stood.</summary>
    public ColumnStage Stood { get; }

    /// <summary>Such as <c>column7</c>, or empty.</summary>
    public string Id { get; }

    /// <summary>Diameter of its head in mm; 0 when it has none.</summary>
    public double HeadDiameter { get; }

    /// <summary>
    /// Area of the head over area of the column, at least 1: how many times the peel stress the column carries.
    /// </summary>
    public double LoadRatio => Math.Max(1, HeadDiameter * HeadDiameter / (Diameter * Diameter));

    /// <summary>Whether it came off the plate whole; what was lost later speaks of handling, not of exposure.</summary>
    public bool Printed => Stood != ColumnStage.Lost;
}
