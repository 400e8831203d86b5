using System.Globalization;

namespace CalibGeom.Verification.Tuning;

/// <summary>
/// The sentence for each case of fit, columns and slots, and what to do about it. A column or slot state of null was
/// not observed. Causes
/// beyond exposure are common practice, without a published source.
/// </summary>
internal static class CaseWords
{
    private const string Sideways = "growth is sideways (blur, pixels, edge offset), not depth";
    private const string RestFirst = "Rest longer first (solids draw back), then take a negative edge offset";
    private const string Handling =
        "Columns that are lost in plenty of light are lost to peeling or adhesion: look at lift speed, film and plate";
    private const string Room =
        "More rest makes room for more exposure; beyond that, expose longer with a negative edge offset.";
    private const string NotLight =
        "Look for an edge offset that is too negative or for shrinkage (scale) before adding exposure";

    /// <param name="fit">1 when the boxes are loose, -1 when they are tight, 0 on target.</param>
    /// <param name="missing">Whether columns are missing.</param>
    /// <param name="closed">Whether low slots are closed.</param>
    /// <param name="about">How much exposure lies between, such as <c>about 0.3 s</c>.</param>
    /// <param name="all">Such as <c>every column</c>.</param>
    /// <param name="slots">Such as <c>the slots are open</c>.</param>
    internal static (string Message, string Remedy) Of(
        int fit,
        bool? missing,
        bool? closed,
        string about,
        string all,
        string slots
    ) =>
        fit switch
        {
            > 0 => Loose(missing, closed, about, all, slots),
            < 0 => Tight(missing, closed, about, all, slots),
            _ => OnTarget(missing, closed, all, slots),
        };

    /// <summary>When the exposure suits the boxes and only the edge offset that was entered does not.</summary>
    internal static (string Message, string Remedy) ByEdgeOffset(int fit, bool? missing, double offset) =>
        (
            string.Create(
                CultureInfo.InvariantCulture,
                $"The boxes are {(fit > 0 ? "loose" : "tight")} because of the edge offset of "
                    + $"{offset:+0.000;-0.000} mm; without it the exposure would suit them."
            ),
            "Change the edge offset before the exposure."
                + (missing == true ? " Columns are missing: " + char.ToLowerInvariant(Room[0]) + Room[1..] : "")
        );

    private static (string, string) Loose(bool? missing, bool? closed, string about, string all, string slots) =>
        (missing, closed) switch
        {
            (true, false) => (
                $"Under-exposed by {about}: the boxes are loose, columns are missing and {slots}.",
                "More exposure closes the gaps and saves columns, and there is room for it."
            ),
            (true, true) => (
                "The boxes are loose and columns are missing although low slots are closed: there is light "
                    + "enough in depth.",
                $"{NotLight}. {Handling}."
            ),
            (true, null) => (
                $"Under-exposed by {about}: the boxes are loose and columns are missing.",
                "More exposure closes the gaps and saves columns."
            ),
            (false, false) => (
                $"Under-exposed by {about} although {all} stands: the boxes are loose and {slots}.",
                "Standing columns alone do not mean enough light, and there is room for more."
            ),
            (false, true) => (
                $"The boxes are loose although {all} stands and low slots are closed: it is not light that is missing.",
                $"{NotLight}."
            ),
            (false, null) => (
                $"Under-exposed by {about} although {all} stands: the boxes are loose.",
                "Standing columns alone do not mean enough light."
            ),
            (null, false) => (
                $"Under-exposed by {about}: the boxes are looser than wanted and {slots}.",
                "There is room for more light."
            ),
            (null, true) => (
                "The boxes are looser than wanted although low slots are closed: there is light enough in depth.",
                $"{NotLight}."
            ),
            _ => ($"Under-exposed by {about}: the boxes are looser than wanted.", ""),
        };

    private static (string, string) Tight(bool? missing, bool? closed, string about, string all, string slots) =>
        (missing, closed) switch
        {
            (true, false) => (
                $"The boxes are tight and columns are missing while {slots}: {Sideways}.",
                $"By fit alone {about} less exposure would do, and cost more columns. {RestFirst}."
            ),
            (true, true) => (
                "The boxes are tight, low slots are closed, and yet columns are missing: more light would not "
                    + "save them.",
                $"By fit alone {about} less exposure would do. {Handling}."
            ),
            (true, null) => (
                "The boxes are tight and columns are missing.",
                $"By fit alone {about} less exposure would do, and cost more columns. {RestFirst}."
            ),
            (false, false) => (
                $"The boxes are tight while {all} stands and {slots}: {Sideways}.",
                $"By fit alone {about} less exposure would do; rest and a negative edge offset cost no columns."
            ),
            (false, true) => (
                $"Over-exposed by {about}: the boxes are tight, {all} stands and low slots are closed.",
                "The closed slots agree: there is too much light."
            ),
            (false, null) => ($"Over-exposed by {about}: the boxes are tight and {all} stands.", ""),
            (null, false) => (
                $"The boxes are tighter than wanted while {slots}: {Sideways}.",
                $"By fit alone {about} less exposure would do; rest and a negative edge offset cost no columns."
            ),
            (null, true) => (
                $"Over-exposed by {about}: the boxes are tighter than wanted and low slots are closed.",
                "The closed slots agree: there is too much light."
            ),
            _ => ($"Over-exposed by {about}: the boxes are tighter than wanted.", ""),
        };

    private static (string, string) OnTarget(bool? missing, bool? closed, string all, string slots) =>
        (missing, closed) switch
        {
            (true, false) => ($"The clearance is on target and {slots}, but columns are missing.", Room),
            (true, true) => (
                "The clearance is on target but columns are missing although low slots are closed: more light "
                    + "would not save them.",
                $"{Handling}."
            ),
            (true, null) => ("The clearance is on target but columns are missing.", Room),
            (false, false) => ($"The clearance is on target, {all} stands and {slots}.", ""),
            (false, true) => (
                $"The clearance is on target and {all} stands, but print-through closes low slots.",
                "Undersides and small tunnels come out smaller; less exposure with a positive edge offset opens them."
            ),
            (false, null) => ($"The clearance is on target and {all} stands.", ""),
            (null, false) => ($"The clearance is on target and {slots}.", ""),
            (null, true) => (
                "The clearance is on target, but print-through closes low slots.",
                "Undersides and small tunnels come out smaller; less exposure with a positive edge offset opens them."
            ),
            _ => ("The clearance is on target.", ""),
        };
}
