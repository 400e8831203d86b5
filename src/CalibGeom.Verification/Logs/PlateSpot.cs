namespace CalibGeom.Verification.Logs;

/// <summary>Where on the plate an object stood. Immutable.</summary>
public sealed record PlateSpot
{
    /// <summary>A place.</summary>
    /// <param name="label">The coupon's label, such as <c>A1</c>, or empty.</param>
    /// <param name="x">X of the object's middle in plate coordinates, mm, -1000 to 1000.</param>
    /// <param name="y">Y of the object's middle in plate coordinates, mm, -1000 to 1000.</param>
    /// <param name="turn">Turn about Z, counter-clockwise: 0 or 90 degrees. Default 0. The axes of readings are the
    /// printer's whatever the turn.</param>
    /// <exception cref="ArgumentException">A value is out of range.</exception>
    public PlateSpot(string label, double x, double y, int turn = 0)
    {
        ArgumentNullException.ThrowIfNull(label);
        if (turn is not (0 or 90))
            throw new ArgumentException($"The turn must be 0 or 90 degrees, not {turn}.", nameof(turn));
        Label = label;
        X = Require.Within(x, -1000, 1000, "place along X", "mm", nameof(x));
        Y = Require.Within(y, -1000, 1000, "place along Y", "mm", nameof(y));
        Turn = turn;
    }

    /// <summary>The coupon's label, or empty.</summary>
    public string Label { get; }

    /// <summary>X of the object's middle in plate coordinates, mm.</summary>
    public double X { get; }

    /// <summary>Y of the object's middle in plate coordinates, mm.</summary>
    public double Y { get; }

    /// <summary>Turn about Z, counter-clockwise: 0 or 90 degrees.</summary>
    public int Turn { get; }
}
