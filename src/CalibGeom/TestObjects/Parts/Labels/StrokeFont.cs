using CalibGeom.Planar;

namespace CalibGeom.TestObjects.Parts.Labels;

/// <summary>
/// Letters drawn as strokes on a grid four wide and six high, made for raised strokes: counters and gaps stay about a
/// stroke wide. A letter is a list of lines, each a list of grid points; a line of one point is a dot.
/// </summary>
internal static class StrokeFont
{
    /// <summary>One step of the letter grid, in strokes.</summary>
    internal const double Step = 0.75;

    /// <summary>Width of a letter, in strokes.</summary>
    internal const double Width = 4 * Step + 1;

    /// <summary>Height of a letter, in strokes.</summary>
    internal const double Height = 6 * Step + 1;

    private static readonly Dictionary<char, string> Lines = new()
    {
        ['A'] = "00 04 26 44 40,02 42",
        ['B'] = "00 06 36 45 44 33 03,33 42 41 30 00",
        ['C'] = "45 36 16 05 01 10 30 41",
        ['D'] = "00 06 26 44 42 20 00",
        ['E'] = "40 00 06 46,03 33",
        ['F'] = "00 06 46,03 33",
        ['G'] = "45 36 16 05 01 10 30 41 43 23",
        ['H'] = "00 06,40 46,03 43",
        ['I'] = "10 30,16 36,20 26",
        ['J'] = "46 41 30 10 01",
        ['K'] = "00 06,46 03 40",
        ['L'] = "06 00 40",
        ['M'] = "00 06 23 46 40",
        ['N'] = "00 06 40 46",
        ['O'] = "00 06 46 40 00",
        ['P'] = "00 06 36 45 44 33 03",
        ['Q'] = "00 06 46 40 00,22 40",
        ['R'] = "00 06 36 45 44 33 03,23 40",
        ['S'] = "45 36 16 05 04 13 33 42 41 30 10 01",
        ['T'] = "06 46,20 26",
        ['U'] = "06 01 10 30 41 46",
        ['V'] = "06 20 46",
        ['W'] = "06 10 23 30 46",
        ['X'] = "00 46,06 40",
        ['Y'] = "06 23 46,23 20",
        ['Z'] = "06 46 00 40",
        ['0'] = "10 01 05 16 36 45 41 30 10",
        ['1'] = "14 26 20,10 30",
        ['2'] = "05 16 36 45 44 00 40",
        ['3'] = "05 16 36 45 44 33 13,33 42 41 30 10 01",
        ['4'] = "30 36 02 42",
        ['5'] = "46 06 03 33 42 41 30 10 01",
        ['6'] = "45 36 16 05 01 10 30 41 42 33 03",
        ['7'] = "06 46 10",
        ['8'] = "13 04 05 16 36 45 44 33 13 02 01 10 30 41 42 33",
        ['9'] = "01 10 30 41 45 36 16 05 04 13 43",
        ['+'] = "03 43,21 25",
        ['-'] = "03 43",
        ['.'] = "20",
        [','] = "21 10",
        ['/'] = "00 46",
        [':'] = "21,25",
        ['#'] = "10 16,30 36,02 42,04 44",
        ['%'] = "00 46,05,41",
        ['\u00B5'] = "00 05,02 11 31 42 45",
    };

    /// <summary>The letter that a character is drawn as: capitals, and one micro sign for both code points.</summary>
    internal static char Drawn(char character) =>
        character == '\u03BC' ? '\u00B5'
        : character == '\u00B5' ? character
        : char.ToUpperInvariant(character);

    /// <summary>Whether a character can be drawn; a space can.</summary>
    internal static bool Has(char character) => character == ' ' || Lines.ContainsKey(Drawn(character));

    /// <summary>The filled shape of a letter whose lower left corner is the origin.</summary>
    /// <param name="character">A character that <see cref="Has"/> knows.</param>
    /// <param name="stroke">Width of the strokes, mm.</param>
    internal static IReadOnlyList<Region> Shape(char character, double stroke) =>
        character == ' '
            ? []
            :
            [
                .. Region
                    .Union(Lines[Drawn(character)].Split(',').SelectMany(line => Strokes(line, stroke)))
                    .Select(Smooth.Region),
            ];

    private static IEnumerable<Outline> Strokes(string line, double stroke)
    {
        Vector2D[] points = [.. line.Split(' ').Select(p => (At(p[0], stroke), At(p[1], stroke)))];
        return points.Length == 1
            ? [Capsule(points[0], points[0], stroke / 2)]
            : points.Zip(points.Skip(1), (a, b) => Capsule(a, b, stroke / 2));
    }

    private static double At(char digit, double stroke) => ((digit - '0') * Step + 0.5) * stroke;

    /// <summary>A stroke with its ends rounded to half an octagon.</summary>
    private static Outline Capsule(Vector2D a, Vector2D b, double half)
    {
        double along = Math.Atan2(b.Y - a.Y, b.X - a.X);
        return Outline.FromMillimetres(
            Enumerable
                .Range(0, 8)
                .Select(i =>
                {
                    (double sin, double cos) = Math.SinCos(along + (i - 1.5) * Math.PI / 4);
                    double reach = half / Math.Cos(Math.PI / 8);
                    (double x, double y) = i < 4 ? b : a;
                    return new Vector2D(x + reach * cos, y + reach * sin);
                })
        );
    }
}
