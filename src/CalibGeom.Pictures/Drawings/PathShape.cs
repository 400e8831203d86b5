using CalibGeom.Planar;

namespace CalibGeom.Pictures.Drawings;

/// <summary>Polylines or, when closed, rings filled by the even-odd rule.</summary>
internal sealed record PathShape(Vector2D[][] Lines, bool Closed, Ink? Fill, Pen? Pen) : Shape
{
    /// <summary>What the lines are for, such as <c>leader</c>; empty for nothing in particular.</summary>
    internal string Role { get; init; } = "";
}
