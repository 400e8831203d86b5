namespace CalibGeom.TestObjects;

/// <summary>One column of a test object as it is made. Immutable.</summary>
/// <param name="Number">By diameter as listed, copy by copy: with two copies, columns 1 and 2 have the first
/// diameter.</param>
/// <param name="Diameter">Square to its axis, mm.</param>
/// <param name="LoadRatio">(head diameter / column diameter)^2: how many times the pull of a layer over the head
/// exceeds that over the column alone.</param>
/// <param name="X">Centre of the root, mm from the plinth's centre.</param>
/// <param name="Y">Centre of the root, mm from the plinth's centre.</param>
/// <param name="Row">Row in the block, from 1 at the front.</param>
/// <param name="Place">Place in the row, from 1 at the left.</param>
public sealed record ColumnPlan(int Number, double Diameter, double LoadRatio, double X, double Y, int Row, int Place);
