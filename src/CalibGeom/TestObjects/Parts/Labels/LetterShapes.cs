using System.Collections.Concurrent;
using CalibGeom.Planar;

namespace CalibGeom.TestObjects.Parts.Labels;

/// <summary>
/// The letters of one object's labels, which use the same few digits over and over: each is made once. Safe to share
/// between threads.
/// </summary>
/// <param name="stroke">Width of the strokes, mm.</param>
internal sealed class LetterShapes(double stroke)
{
    private readonly ConcurrentDictionary<char, IReadOnlyList<Region>> known = new();

    /// <summary>Width of the strokes, mm.</summary>
    internal double Stroke => stroke;

    /// <summary>The filled shape of a letter whose lower left corner is the origin.</summary>
    internal IReadOnlyList<Region> Of(char letter) =>
        known.GetOrAdd(StrokeFont.Drawn(letter), static (l, width) => StrokeFont.Shape(l, width), stroke);
}
