using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Objects.Families;

/// <summary>One object of a family. Immutable.</summary>
/// <param name="Number">From 1, the last axis changing fastest.</param>
/// <param name="Values">The value on each axis.</param>
/// <param name="Spec">The spec with these values.</param>
public sealed record FamilyMember(int Number, IReadOnlyList<string> Values, TestObjectSpec Spec);
