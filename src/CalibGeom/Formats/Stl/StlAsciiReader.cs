using System.Globalization;
using System.Text;

namespace CalibGeom.Formats.Stl;

/// <summary>
/// Reads ASCII STL: any number of solids, keywords in any case, numbers as 32-bit floats as in the binary form. Lenient
/// reading drops a facet that is not whole and goes on at the next keyword <c>facet</c>, <c>endsolid</c> or
/// <c>solid</c>.
/// </summary>
internal sealed class StlAsciiReader(Stream stream, Faults faults)
{
    private static readonly string[] Keywords =
    [
        "vertex",
        "facet",
        "normal",
        "outer",
        "loop",
        "endloop",
        "endfacet",
        "endsolid",
        "solid",
    ];

    private readonly TextTokens text = new(stream, faults);
    private readonly List<MeshObject> objects = [];
    private string word = "";

    internal IReadOnlyList<MeshObject> Read()
    {
        Advance();
        while (word.Length > 0)
        {
            if (word == "solid")
                ReadSolid();
            else
                Skip("solid", $"\"solid\" expected, found \"{word}\"", "text outside of solids");
        }
        return objects;
    }

    private void ReadSolid()
    {
        string name = text.RestOfLine();
        var mesh = new FacetMesh(0);
        Advance();
        while (word is not ("endsolid" or "solid" or ""))
        {
            if (word != "facet")
                Skip("facet", $"\"facet\" or \"endsolid\" expected, found \"{word}\"", "text between facets");
            else
                ReadFacet(mesh);
        }
        if (word == "endsolid")
        {
            text.RestOfLine();
            Advance();
        }
        else
            faults.Raise(
                $"the {(word.Length == 0 ? "file ends" : "next solid begins")} without "
                    + $"\"endsolid\"; it is truncated",
                "endings of solids",
                text.Line
            );
        objects.Add(new(name, mesh.ToMesh()));
    }

    private void ReadFacet(FacetMesh mesh)
    {
        Span<float> values = stackalloc float[12];
        string? fault = Facet(values);
        if (fault is null)
        {
            var facet = new StlFacet(
                values[0],
                values[1],
                values[2],
                values[3],
                values[4],
                values[5],
                values[6],
                values[7],
                values[8],
                values[9],
                values[10],
                values[11],
                0
            );
            mesh.Add(new ReadOnlySpan<StlFacet>(in facet));
            Advance();
            return;
        }
        faults.Raise(fault, "facets that are not whole", text.Line);
        while (word is not ("facet" or "endsolid" or "solid" or ""))
            Advance();
    }

    /// <summary>Reads a facet behind its first keyword; returns what is wrong with it.</summary>
    private string? Facet(Span<float> values)
    {
        string? fault = Expect("normal") ?? Numbers(values[..3]) ?? Expect("outer") ?? Expect("loop");
        for (int corner = 1; corner <= 3; corner++)
            fault ??= Expect("vertex") ?? Numbers(values.Slice(3 * corner, 3));
        return fault ?? Expect("endloop") ?? Expect("endfacet");
    }

    private string? Expect(string keyword)
    {
        Advance();
        if (word == keyword)
            return null;
        return word.Length == 0
            ? $"the file ends where \"{keyword}\" is expected; it is truncated"
            : $"\"{keyword}\" expected, found \"{word}\"";
    }

    private string? Numbers(Span<float> values)
    {
        foreach (ref float value in values)
        {
            ReadOnlySpan<byte> next = text.Word();
            if (
                float.TryParse(next, NumberStyles.Float, CultureInfo.InvariantCulture, out value)
                && float.IsFinite(value)
            )
                continue;
            word = Keyword(next) ?? Encoding.UTF8.GetString(next.Length > 40 ? next[..40] : next);
            return word.Length == 0
                ? "the file ends where a number is expected; it is truncated"
                : $"\"{word}\" is not a finite 32-bit number";
        }
        return null;
    }

    private void Skip(string to, string fault, string dropped)
    {
        faults.Raise(fault, dropped, text.Line);
        while (word.Length > 0 && word != to && word is not ("solid" or "endsolid"))
            Advance();
        if (word == "endsolid" && to == "solid")
            Advance();
    }

    private void Advance()
    {
        ReadOnlySpan<byte> next = text.Word();
        word = Keyword(next) ?? Encoding.UTF8.GetString(next.Length > 40 ? next[..40] : next).ToLowerInvariant();
    }

    // Known words cost no allocation: a file of a million facets has ten million of them.
    private static string? Keyword(ReadOnlySpan<byte> found)
    {
        foreach (string keyword in Keywords)
            if (Ascii.EqualsIgnoreCase(found, keyword))
                return keyword;
        return null;
    }
}
