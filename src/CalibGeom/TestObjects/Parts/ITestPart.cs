using CalibGeom.Planar;

namespace CalibGeom.TestObjects.Parts;

/// <summary>
/// Something that stands on the plinth of a test object. The layout asks for its footprint and gives it a place; the
/// solid, the feature table, the design rules, the light model and the comparison with a mesh ask for the rest. A part
/// that a developer writes is asked the same as those of the project. Implementations are immutable: the same part in
/// the same place always gives the same answers.
/// </summary>
public interface ITestPart
{
    /// <summary>A name that no other part of the object has, such as <c>box1</c>; findings tell places by it.</summary>
    string Name { get; }

    /// <summary>What it covers and keeps free, seen from above in its own frame.</summary>
    PartFootprint Footprint { get; }

    /// <summary>
    /// Other ways in which it may stand, the dearest last; the layout takes the one that saves most room. Default none.
    /// </summary>
    IReadOnlyList<ITestPart> OtherWays => [];

    /// <summary>What it is made of in a place: lofts that overlap neither each other nor other parts.</summary>
    /// <param name="place">Where it stands.</param>
    /// <exception cref="ArgumentException">Thrown while lofts are made when its sizes allow no shape.</exception>
    IEnumerable<PartBody> Bodies(PartPlace place);

    /// <summary>Holes right through the plinth below it. Default none.</summary>
    /// <param name="place">Where it stands.</param>
    IEnumerable<Outline> CutOuts(PartPlace place) => [];

    /// <summary>What to measure, count or feel on it, each size with its gauge lines. Default nothing.</summary>
    /// <param name="place">Where it stands.</param>
    IEnumerable<PartFeature> Features(PartPlace place) => [];

    /// <summary>What its own design rules find. Default nothing.</summary>
    /// <param name="place">Where it stands.</param>
    IEnumerable<Finding> Check(PartPlace place) => [];

    /// <summary>
    /// What is said of a tilted object, which goes without this part; null (the default) where it stands there too.
    /// </summary>
    Finding? MissingWhenTilted => null;

    /// <summary>What is written on the plinth for it, in characters that a title may have. Default nothing.</summary>
    string Label => "";

    /// <summary>How many ways lead right through it: vents, tunnels, slots. Default 0.</summary>
    int TunnelCount => 0;
}
