using CalibGeom.Solids;

namespace CalibGeom.TestObjects.Parts;

/// <summary>A piece of a part that findings name by itself, such as one column of a block. Immutable.</summary>
/// <param name="Subject">The name: that of the part, or one of its own such as <c>column7</c>.</param>
/// <param name="Lofts">What it is made of, mm; they may be made when they are asked for.</param>
public sealed record PartBody(string Subject, IEnumerable<Loft> Lofts);
