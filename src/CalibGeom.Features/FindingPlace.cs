namespace CalibGeom.Features;

/// <summary>A place on a mesh that a finding is about. Immutable.</summary>
/// <param name="X">mm, in the coordinates of the mesh.</param>
/// <param name="Y">mm, in the coordinates of the mesh.</param>
/// <param name="Z">mm, in the coordinates of the mesh.</param>
/// <param name="Feature">The part of a test object it belongs to, such as <c>box2</c>; empty when that is not
/// known.</param>
/// <param name="Layer">The layer it lies in, from 0 at the plate, or the first of several; null when no process is
/// given.</param>
/// <param name="LastLayer">The last layer of what lies in several; null when it lies in one or no process is
/// given.</param>
public sealed record FindingPlace(
    double X,
    double Y,
    double Z,
    string Feature,
    int? Layer = null,
    int? LastLayer = null
);
