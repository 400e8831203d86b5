using System.Globalization;

namespace CalibGeom.Verification.Clearances;

/// <summary>What gross errors look like and what to do about them.</summary>
internal static class GrossErrors
{
    /// <summary>Standard uncertainties within which one reading passes for another's.</summary>
    private const double Near = 2.5;

    internal static IReadOnlyList<GrossError> Describe(ModelSearch search) =>
        search
            .Gross.Select(g =>
            {
                (string looksLike, string remedy) = Look(g, search);
                return new GrossError
                {
                    Feature = g.Face.Face.Id,
                    Instrument = g.Face.Group.Instrument.Name,
                    Print = g.Face.Print + 1,
                    Distance = g.Distance,
                    StandardUncertainty = g.U,
                    Probability = g.Probability,
                    LooksLike = looksLike,
                    Remedy = remedy,
                };
            })
            .ToArray();

    private static (string LooksLike, string Remedy) Look(GrossFace g, ModelSearch search)
    {
        Face face = g.Face.Face;
        GrossFace[] others = search.Gross.Where(o => o != g && o.Face.Print == g.Face.Print).ToArray();
        if (Array.Find(others, o => Passes(g, o) && Passes(o, g)) is { } swapped)
            return (
                $"it and {swapped.Face.Face.Id} look swapped",
                "Exchange the two values in the file if they were, or read both again."
            );
        if (Array.Find(others, o => IsSameBox(face, o.Face.Face) && g.Distance * o.Distance < 0) is { } across)
            return (
                $"with {across.Face.Face.Id} off the other way: the box is not square",
                "Look whether the box leans or was pulled; read it at another height."
            );
        if (WrongFace(g, search) is { } wrong)
            return (
                $"it looks like {wrong}: the wrong face?",
                "Read the face again, with the arrow on the plinth in view."
            );
        return (face.Inside, g.Distance > 0) switch
        {
            (false, true) => (
                "it looks like a burr, a support mark or a label between the jaws",
                "Look at the edges against the light, take burrs off with a blade held flat, read the middle again."
            ),
            (false, false) => (
                "it looks like a jaw on an edge, or pressed in",
                "Read it again with the flats of the jaws, lightly."
            ),
            (true, false) => (
                "it looks like resin left in a corner, or a burr inside",
                "Clean the pocket, let it dry, read it again away from corners."
            ),
            (true, true) => (
                "it looks like jaws that stood slanted in the pocket",
                "Read it again: swing for the least across the walls."
            ),
        };
    }

    private static bool Passes(GrossFace read, GrossFace other) =>
        Math.Abs(read.Face.Group.Mean - other.Predicted) < Near * other.U;

    private static bool IsSameBox(Face a, Face b) => a.Axis != b.Axis && a.Id.Item == b.Id.Item && a.Inside == b.Inside;

    /// <summary>Another face of clearly different size whose value the reading has.</summary>
    private static string? WrongFace(GrossFace g, ModelSearch search)
    {
        Face? best = search
            .Fit.Faces.Where(f => f.Print == g.Face.Print && f.Face.Id != g.Face.Face.Id)
            .Where(f => Math.Abs(f.Face.Nominal - g.Face.Face.Nominal) > 5 * g.U)
            .Where(f => Math.Abs(f.Group.Mean - g.Face.Group.Mean) < Near * g.U)
            .MinBy(f => Math.Abs(f.Group.Mean - g.Face.Group.Mean))
            ?.Face;
        return best is null ? null : string.Create(CultureInfo.InvariantCulture, $"{best.Id}");
    }
}
