namespace CalibGeom.Pictures.Drawings;

/// <summary>How a text is set. Immutable.</summary>
/// <param name="Size">Font size in pixels, above 0; 13 by default.</param>
/// <param name="Anchor">Which end stands at the point; the start by default.</param>
/// <param name="Bold">Whether strokes are heavier.</param>
/// <param name="Turn">Degrees counter-clockwise about the point; 0 by default.</param>
public sealed record TextStyle(
    double Size = 13,
    TextAnchor Anchor = TextAnchor.Start,
    bool Bold = false,
    double Turn = 0
)
{
    /// <summary>The colour; <see cref="Ink.Dark"/> by default.</summary>
    public Ink Ink { get; init; } = Ink.Dark;

    /// <summary>
    /// The feature whose size the text tells, such as <c>box1.outside.x</c>; kept in the SVG so that the text can be
    /// told from others. Empty (default) for any other text.
    /// </summary>
    public string Feature { get; init; } = "";
}
