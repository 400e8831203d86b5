namespace CalibGeom.Tests.Plates;

/// <summary>Tests that must not share the process with others while they run.</summary>
[CollectionDefinition(nameof(AloneCollection), DisableParallelization = true)]
public class AloneCollection;
