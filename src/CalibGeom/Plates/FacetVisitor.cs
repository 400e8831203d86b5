using CalibGeom.Formats.Stl;

namespace CalibGeom.Plates;

/// <summary>Takes a block of facets; the span is good during the call only.</summary>
/// <param name="facets">The facets, as records of a binary STL.</param>
public delegate void FacetVisitor(ReadOnlySpan<StlFacet> facets);
