using CalibGeom.Planar;
using CalibGeom.Solids;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.TestObjects.Parts.Labels;

/// <summary>A raised text, broken into lines in one of several ways.</summary>
internal sealed class TextPart(string name, TextBlock block, double height) : ITestPart
{
    /// <summary>Distance of a low text from tall parts, mm: a stroke stays readable.</summary>
    internal const double Room = 0.8;

    public string Name => name;

    public IReadOnlyList<ITestPart> OtherWays { get; private init; } = [];

    public PartFootprint Footprint =>
        new([new Rect(0, 0, block.Width, block.Height)], []) { Gap = Room, Height = PartHeight.Low };

    /// <summary>The title and the labels of all parts, then the arrow, which stands without labels too.</summary>
    /// <param name="spec">The whole object.</param>
    /// <param name="parts">The parts that labels are for.</param>
    internal static IEnumerable<ITestPart> Parts(TestObjectSpec spec, IEnumerable<ITestPart> parts)
    {
        if (spec.Labels is { } labels)
        {
            var letters = new LetterShapes(labels.Stroke);
            if (Of("label.title", spec.Title, labels, letters) is { } title)
                yield return title;
            foreach (ITestPart part in parts)
                if (Of($"label.{part.Name}", part.Label, labels, letters) is { } text)
                    yield return text;
        }
        yield return new ArrowPart(spec.Labels);
    }

    public IEnumerable<PartBody> Bodies(PartPlace place) =>
        [
            new PartBody(
                name,
                block.Shapes(place.Centre).Select(r => Loft.Prism(r, place.BaseZ, Grid.Snap(place.BaseZ + height)))
            ),
        ];

    private static TextPart? Of(string name, string text, LabelsSpec labels, LetterShapes letters)
    {
        TextPart[] ways = [.. TextBlock.Breakings(text, letters).Select(b => new TextPart(name, b, labels.Height))];
        return ways.Length == 0 ? null : new TextPart(name, ways[0].Block, labels.Height) { OtherWays = ways[1..] };
    }

    private TextBlock Block => block;
}
