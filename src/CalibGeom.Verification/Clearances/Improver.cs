using System.Globalization;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Verification.Clearances;

/// <summary>
/// Tries further measurements. Uncertainty depends on what is measured, not on what comes out, so each can be judged
/// before it is made.
/// </summary>
internal static class Improver
{
    private const int Repeats = 3;

    internal static IReadOnlyList<Improvement> Of(MatchedReadings matched, PredictionOptions options)
    {
        double now = Widest(matched, options, [], []);
        if (now == 0)
            return [];
        Instrument instrument = matched
            .Sizes.GroupBy(g => g.Instrument)
            .OrderByDescending(g => g.Sum(r => r.Count))
            .ThenBy(g => g.Key.Name, StringComparer.Ordinal)
            .First()
            .Key;
        return Candidates(matched, instrument)
            .Select(c =>
            {
                double u = Widest(matched, options, c.Sizes, c.References);
                return new Improvement(c.Action, Repeats * (c.Sizes.Length + c.References.Length), u, u / now);
            })
            .OrderBy(c => Math.Round(c.Ratio, 6))
            .ThenBy(c => c.Action, StringComparer.Ordinal)
            .ToArray();
    }

    private static IEnumerable<(string Action, ReadingGroup[] Sizes, ReadingGroup[] References)> Candidates(
        MatchedReadings matched,
        Instrument instrument
    )
    {
        Face[] faces = matched.Table.Select(Face.Of).OfType<Face>().OrderBy(f => f.Id).ToArray();
        HashSet<FeatureId> read = matched.Sizes.Select(g => g.Id).ToHashSet();
        foreach (Face f in faces.Where(f => !read.Contains(f.Id)))
            yield return ($"measure {f.Id} three times", [Read(f.Id, f.Nominal, instrument)], []);
        string near = faces.Length > 0 ? faces[0].Nominal.ToString("0", CultureInfo.InvariantCulture) : "10";
        ReadingGroup outside = Read(Reference(KnownFeatures.Outside, near), 1, instrument),
            inside = Read(Reference(KnownFeatures.Inside, near), 1, instrument);
        yield return ("read a gauge block three times with the outside jaws (reference.outside.*)", [], [outside]);
        yield return (
            "read a ring or two blocks with a known gap three times with the inside jaws (reference.inside.*)",
            [],
            [inside]
        );
        yield return (
            "read a gauge block with the outside jaws and a known gap with the inside jaws, three times each",
            [],
            [outside, inside]
        );
        ReadingGroup[] again = matched
            .Sizes.Where(g => Face.Of(matched.Features[g.Id]) is not null)
            .Select(g => Read(g.Id, g.Mean, g.Instrument))
            .ToArray();
        yield return ("measure every face that was read three more times", again, []);
        yield return (
            "read a gauge block with the outside jaws and a known gap with the inside jaws, and every face "
                + "again, three times each",
            again,
            [outside, inside]
        );
    }

    private static FeatureId Reference(string jaw, string near) =>
        FeatureId.Of(KnownFeatures.Reference, null, $"{jaw}.{near}");

    /// <summary>Three readings that scatter as the instrument is known to.</summary>
    private static ReadingGroup Read(FeatureId id, double value, Instrument instrument)
    {
        double s = instrument.Repeatability ?? Instrument.DefaultRepeatability;
        return new ReadingGroup(id, instrument, value, Repeats, (Repeats - 1) * s * s);
    }

    private static double Widest(
        MatchedReadings matched,
        PredictionOptions options,
        ReadingGroup[] sizes,
        ReadingGroup[] references
    )
    {
        ModelFit fit = ModelFit.Of([matched.With(sizes, references)], options);
        return JointDesign
            .All(matched.Table)
            .SelectMany(d => d.Axes)
            .Where(a => fit.Axes.Contains(a.Key))
            .Select(a => fit.System.Predict(fit.Clearance(a.Value.Peg, a.Value.Pocket)).StandardUncertainty)
            .DefaultIfEmpty(0)
            .Max();
    }
}
