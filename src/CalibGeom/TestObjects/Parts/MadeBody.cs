using CalibGeom.Solids;

namespace CalibGeom.TestObjects.Parts;

/// <summary>A piece of an object with its lofts made.</summary>
/// <param name="Owner">The part it belongs to.</param>
/// <param name="Subject">The name that findings give it.</param>
/// <param name="Lofts">What it is made of.</param>
internal sealed record MadeBody(string Owner, string Subject, IReadOnlyList<Loft> Lofts);
