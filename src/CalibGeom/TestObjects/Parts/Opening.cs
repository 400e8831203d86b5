namespace CalibGeom.TestObjects.Parts;

/// <summary>
/// A way right through a part that light is to be seen through: the layout gives the part a place, and a design rule
/// holds it, where enough of the straight lines through the opening meet nothing else.
/// </summary>
/// <param name="Room">Its room seen from above, mm.</param>
/// <param name="AlongX">Whether it leads along x, else along y.</param>
/// <param name="Floor">Its floor, mm above the plate.</param>
/// <param name="Roof">Its roof, mm above the plate.</param>
public readonly record struct Opening(Rect Room, bool AlongX, double Floor, double Roof)
{
    /// <summary>The opening turned about the origin by quarters, then moved.</summary>
    internal Opening At(double x, double y, int quarters) =>
        this with
        {
            Room = Room.Turn(quarters).Move(x, y),
            AlongX = AlongX ^ ((quarters & 1) != 0),
        };
}
