namespace CalibGeom.TestObjects;

/// <summary>One column of a test object as it is made. Immutable.</summary>
public sealed record ColumnPlan
{
    /// <summary>
    /// By diameter as listed, copy by copy: with two copies, columns 1 and 2 have the first diameter.
    /// </summary>
    public required int Number { get; init; }

    /// <summary>Square to its axis, mm.</summary>
    public required double Diameter { get; init; }

    /// <summary>
    /// (head diameter / column diameter)^2: how many times the pull of a layer over the head exceeds that over the
    /// column alone.
    /// </summary>
    public required double LoadRatio { get; init; }

    /// <summary>Centre of the root, mm from the plinth's centre.</summary>
    public required double X { get; init; }

    /// <summary>Centre of the root, mm from the plinth's centre.</summary>
    public required double Y { get; init; }

    /// <summary>Row in the block, from 1 at the front.</summary>
    public required int Row { get; init; }

    /// <summary>Place in the row, from 1 at the left.</summary>
    public required int Place { get; init; }
}
