using CalibGeom.Meshes;

namespace CalibGeom.TestObjects;

/// <summary>A place on a face that a measuring tool touches, before any tilt.</summary>
/// <param name="Point">mm from the plinth's centre and the plate.</param>
/// <param name="Outward">A direction of length 1, out of the material.</param>
/// <param name="Behind">How thick the material behind the face is, mm.</param>
/// <param name="Ahead">How far the way out of the material is free at least, mm.</param>
public readonly record struct GaugeFace(Vector3D Point, Vector3D Outward, double Behind, double Ahead);
