using System.Diagnostics.CodeAnalysis;
using CalibGeom.Planar;
using CalibGeom.Solids;
using CalibGeom.TestObjects.Layout;
using CalibGeom.TestObjects.Parts.Labels;
using CalibGeom.TestObjects.Parts.Plinth;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.TestObjects.Parts;

/// <summary>
/// Everything about an object that follows from its spec: parts, places, and the pieces to make the solid of.
/// </summary>
internal sealed class ObjectPlan
{
    private const string PlinthName = KnownFeatures.Plinth;

    private readonly int mark;

    private (IReadOnlyList<MadeBody> Bodies, ArgumentException? Fault) made;

    internal ObjectPlan(TestObjectSpec spec, int mark = 0)
    {
        Spec = spec;
        this.mark = mark;
        PlinthTop = PlinthShape.Top(spec.Plinth);
        var pixels = new PixelGrid(spec);
        ILookup<bool, ITestPart> asked = ObjectParts
            .Of(spec, pixels, PlinthTop)
            .ToLookup(p => Tilted && p.MissingWhenTilted is not null);
        Missing = [.. asked[true].Select(p => p.MissingWhenTilted!)];
        ITestPart[] parts = [.. asked[false], .. TextPart.Parts(spec, asked[false])];
        Place(parts, pixels, seen: false);
        if (Darkest.Share < SightLines.LeastShare)
            Place(parts, pixels, seen: true);
        Features = [.. Parts.SelectMany(p => p.Part.Features(p.Place))];
    }

    internal TestObjectSpec Spec { get; }

    /// <summary>Top of the plinth above the plate, mm, on the grid.</summary>
    internal double PlinthTop { get; }

    internal bool Tilted => Spec.Tilt.Angle != 0;

    /// <summary>What is said of the parts that a tilted object goes without.</summary>
    internal IReadOnlyList<Finding> Missing { get; }

    internal ObjectLayout Layout { get; private set; }

    /// <summary>The parts with their places, in the order of the feature table.</summary>
    internal IReadOnlyList<(ITestPart Part, PartPlace Place)> Parts { get; private set; }

    /// <summary>The opening that the smallest share of lines passes, and that share; 1 without openings.</summary>
    internal (string Owner, int Opening, double Share) Darkest { get; private set; }

    /// <summary>What to measure, in the order of the feature table.</summary>
    internal IReadOnlyList<PartFeature> Features { get; }

    /// <summary>The places that light must leave open all through.</summary>
    internal int TunnelCount => Parts.Sum(p => p.Part.TunnelCount + p.Part.CutOuts(p.Place).Count());

    /// <summary>Each piece that can be made, the plinth first.</summary>
    internal IReadOnlyList<MadeBody> Bodies => made.Bodies;

    /// <summary>Why a piece cannot be made, or null when all can.</summary>
    internal ArgumentException? Fault => made.Fault;

    /// <summary>The parts of a kind with their places.</summary>
    internal IEnumerable<(T Part, PartPlace Place)> Of<T>()
        where T : ITestPart => Parts.Where(p => p.Part is T).Select(p => ((T)p.Part, p.Place));

    /// <summary>Gives every part a place and makes its pieces there.</summary>
    [MemberNotNull(nameof(Layout), nameof(Parts))]
    private void Place(ITestPart[] parts, PixelGrid pixels, bool seen)
    {
        Layout = ObjectLayout.Of(parts, Spec.Plinth, PlinthTop, pixels, seen);
        Parts = [.. Layout.Parts.Select(p => (p.Part, PlaceOf(p)))];
        made = Make();
        Darkest = SightLines.Of(Bodies).Worst(Layout.Parts);
    }

    private PartPlace PlaceOf(Placement p) => new(p.X, p.Y, p.Quarters, PlinthTop, Spec) { Mark = mark };

    private (IReadOnlyList<MadeBody>, ArgumentException?) Make()
    {
        var bodies = new List<MadeBody>();
        ArgumentException? fault = null;
        foreach ((string owner, PartBody body) in AllBodies())
            try
            {
                bodies.Add(new MadeBody(owner, body.Subject, [.. body.Lofts]));
            }
            catch (ArgumentException e)
            {
                fault ??= e;
            }
        return (bodies, fault);
    }

    private IEnumerable<(string Owner, PartBody Body)> AllBodies()
    {
        yield return (PlinthName, new PartBody(PlinthName, PlinthLofts()));
        foreach ((ITestPart part, PartPlace place) in Parts)
        foreach (PartBody body in part.Bodies(place))
            yield return (part.Name, body);
    }

    /// <summary>Made when they are asked for, so that what goes wrong is caught with the plinth.</summary>
    private IEnumerable<Loft> PlinthLofts()
    {
        PartPlace? pad = Of<PadPart>().Select(p => p.Place).FirstOrDefault();
        Outline[] cutOuts = [.. Parts.SelectMany(p => p.Part.CutOuts(p.Place))];
        foreach (Loft loft in new PlinthShape(Spec, Layout.HalfX, Layout.HalfY, pad).Lofts(cutOuts))
            yield return loft;
    }
}
