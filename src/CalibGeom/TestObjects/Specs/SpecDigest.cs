using System.Text;
using CalibGeom.Planar;
using CalibGeom.Solids;
using CalibGeom.TestObjects.Parts;

namespace CalibGeom.TestObjects.Specs;

/// <summary>The digest that ties an object, its feature table and readings of it together.</summary>
public static class SpecDigest
{
    /// <summary>
    /// The first 16 hex digits, in lower case, of the SHA-256 of a spec's canonical form
    /// (<see cref="SpecJson.ToCanonicalBytes"/>) and of the shapes of <see cref="TestObjectSpec.OwnParts"/>. Equal
    /// specs have equal digests, however they were written; the order of names, the spelling of numbers, comments and
    /// the culture do not matter.
    /// </summary>
    /// <param name="spec">The spec.</param>
    public static string Of(TestObjectSpec spec)
    {
        byte[] canonical = SpecJson.ToCanonicalBytes(spec);
        byte[] own = Encoding.UTF8.GetBytes(string.Concat(spec.OwnParts.Select(p => Text(p, spec))));
        return Sha256.ToHex([.. canonical, .. own])[..16];
    }

    /// <summary>A part's name, shape and features, as it stands in the middle of the plinth.</summary>
    private static string Text(ITestPart part, TestObjectSpec spec)
    {
        var place = new PartPlace(0, 0, 0, Grid.Snap(spec.Plinth.Thickness), spec);
        var text = new StringBuilder($"\npart {part.Name}");
        foreach (Loft loft in part.Bodies(place).SelectMany(b => b.Lofts))
        {
            text.Append(FormattableString.Invariant($"\n{loft.BottomLevel} {loft.TopLevel}"));
            foreach (GridPoint p in loft.Bottom.Rings.Concat(loft.Top.Rings).SelectMany(r => r.Points.ToArray()))
                text.Append(FormattableString.Invariant($" {p.X},{p.Y}"));
        }
        foreach (PartFeature f in part.Features(place))
            text.Append(FormattableString.Invariant($"\n{f.Feature.Id} {f.Feature.Nominal:R}"));
        return text.ToString();
    }
}
