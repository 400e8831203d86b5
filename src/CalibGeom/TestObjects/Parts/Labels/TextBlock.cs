using CalibGeom.Planar;

namespace CalibGeom.TestObjects.Parts.Labels;

/// <summary>Some lines of text in the stroke font, in their own frame: lower left corner at the origin.</summary>
internal sealed class TextBlock
{
    private const double Advance = StrokeFont.Width + 0.9;
    private const double LinePitch = StrokeFont.Height + 1.2;
    private readonly string[] lines;
    private readonly LetterShapes letters;
    private readonly double stroke;

    private TextBlock(string[] lines, LetterShapes letters)
    {
        (this.lines, this.letters) = (lines, letters);
        stroke = letters.Stroke;
    }

    /// <summary>mm.</summary>
    internal double Width => ((lines.Max(l => l.Length) - 1) * Advance + StrokeFont.Width) * stroke;

    /// <summary>mm.</summary>
    internal double Height => ((lines.Length - 1) * LinePitch + StrokeFont.Height) * stroke;

    /// <summary>The lines, top to bottom.</summary>
    internal IReadOnlyList<string> Lines => lines;

    /// <summary>The same text broken into one to four lines, fewest first; none for a text without ink.</summary>
    internal static IEnumerable<TextBlock> Breakings(string text, LetterShapes letters)
    {
        string[] words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        if (words.Length == 0)
            yield break;
        int total = words.Sum(w => w.Length + 1) - 1,
            last = 0;
        for (int parts = 1; parts <= 4; parts++)
        {
            string[] lines = Wrap(words, (total + parts - 1) / parts);
            if (lines.Length == last)
                continue;
            last = lines.Length;
            yield return new TextBlock(lines, letters);
        }
    }

    /// <summary>The filled shapes of all letters with the lower left corner at a point.</summary>
    internal IEnumerable<Region> Shapes(GridPoint corner)
    {
        for (int row = 0; row < lines.Length; row++)
        for (int column = 0; column < lines[row].Length; column++)
        {
            double x = corner.XMillimetres + column * Advance * stroke;
            double y = corner.YMillimetres + (lines.Length - 1 - row) * LinePitch * stroke;
            foreach (Region region in letters.Of(lines[row][column]))
                yield return region.Translate(x, y);
        }
    }

    /// <summary>Words into lines of at most about a length; a word alone may be longer.</summary>
    private static string[] Wrap(string[] words, int length)
    {
        var lines = new List<string>();
        foreach (string word in words)
            if (lines.Count > 0 && lines[^1].Length + word.Length < length)
                lines[^1] += " " + word;
            else
                lines.Add(word);
        return [.. lines];
    }
}
