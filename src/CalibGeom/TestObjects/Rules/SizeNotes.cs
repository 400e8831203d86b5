namespace CalibGeom.TestObjects.Rules;

/// <summary>Notes on what pixels and layers make of sizes.</summary>
internal static class SizeNotes
{
    /// <summary>A width in pixels.</summary>
    internal static Finding Pixels(string subject, double made, double? wanted, double pitch)
    {
        PixelCount count = PixelCount.Of(made, pitch);
        string asWanted =
            wanted is { } w && Math.Abs(w - made) > 1e-9 ? FormattableString.Invariant($" ({w:0.####} mm wanted)") : "";
        return Judge.Note(
            "pixels",
            subject,
            FormattableString.Invariant($"{made:0.####} mm{asWanted} is {count} pixels{Real(count, pitch)}."),
            made / pitch,
            null,
            "pixels"
        );
    }

    /// <summary>A height in layers.</summary>
    internal static Finding Layers(string subject, double height, double layer)
    {
        PixelCount count = PixelCount.Of(height, layer);
        return Judge.Note(
            "layers",
            subject,
            FormattableString.Invariant($"{height:0.####} mm is {count} layers{Real(count, layer)}."),
            height / layer,
            null,
            "layers"
        );
    }

    /// <summary>Several heights in layers, with a warning when the lowest is less than one.</summary>
    internal static IEnumerable<Finding> Layers(
        string subject,
        string lowest,
        IReadOnlyList<double> heights,
        double layer
    ) =>
        [
            Judge.Note("layers", subject, $"In layers, {Counts(heights, layer)}."),
            .. NoLowerThanALayer(subject, lowest, heights.Min(), layer),
        ];

    /// <summary>A warning when a height is less than a layer.</summary>
    internal static IEnumerable<Finding> NoLowerThanALayer(string subject, string what, double height, double layer) =>
        Judge.AtLeast(
            "lower-than-a-layer",
            subject,
            what,
            height / layer,
            0,
            1,
            "layers",
            "Make it at least one layer high, or print thinner layers."
        );

    /// <summary>Sizes with their counts, in one line.</summary>
    internal static string Counts(IEnumerable<double> sizes, double pitch) =>
        string.Join(", ", sizes.Select(s => FormattableString.Invariant($"{s:0.###} mm is {PixelCount.Of(s, pitch)}")));

    private static string Real(PixelCount count, double pitch) =>
        count.IsWhole
            ? ""
            : FormattableString.Invariant(
                $", which give {count.Fewest * pitch:0.####} or {count.Most * pitch:0.####} mm"
            );
}
