using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Cli.Shared;

/// <summary>A spec with the name that files made from it get.</summary>
internal sealed record SpecSource(string Name, TestObjectSpec Spec);
