using System.Globalization;
using System.Runtime.InteropServices;
using System.Text;
using CalibGeom.Features.Files;
using CalibGeom.Meshes;
using CalibGeom.Planar;

namespace CalibGeom.Formats.Obj;

/// <summary>
/// Reads the polygons of a Wavefront OBJ; an <c>o</c> statement starts an object. Groups, materials and texture are no
/// part of a mesh and are skipped; lines and points are skipped and said; free-form surfaces are a fault.
/// </summary>
internal sealed class ObjReader(Stream stream, Faults faults)
{
    private const int MostCorners = ReaderLimits.FaceCorners;

    // Vertices between the first and the last of an object, for each of its triangles' corners.
    private const int WideRange = 8;

    private static readonly HashSet<string> Skipped =
    [
        "vn",
        "vt",
        "vp",
        "g",
        "s",
        "mg",
        "usemtl",
        "mtllib",
        "usemap",
        "maplib",
        "bevel",
        "c_interp",
        "d_interp",
        "lod",
        "shadow_obj",
        "trace_obj",
    ];

    private static readonly HashSet<string> NoSurface = ["l", "p"];

    private static readonly HashSet<string> FreeForm =
    [
        "cstype",
        "deg",
        "bmat",
        "step",
        "curv",
        "curv2",
        "surf",
        "parm",
        "trim",
        "hole",
        "scrv",
        "sp",
        "end",
        "con",
        "ctech",
        "stech",
    ];

    private readonly TextTokens text = new(stream, faults);
    private readonly List<double> coordinates = [];
    private readonly List<MeshObject> objects = [];
    private readonly List<int> triangles = [];
    private readonly List<int> corners = [];
    private readonly List<Vector3D> points = [];
    private readonly PolygonTriangulator triangulator = new();
    private string objectName = "";
    private bool continued;

    internal static bool IsStatement(string word) =>
        word is "v" or "f" or "o" || Skipped.Contains(word) || NoSurface.Contains(word) || FreeForm.Contains(word);

    internal IReadOnlyList<MeshObject> Read()
    {
        while (text.NextLine())
        {
            ReadOnlySpan<byte> statement = text.WordInLine();
            if (statement.SequenceEqual("v"u8))
                Vertex();
            else if (statement.SequenceEqual("f"u8))
                Face();
            else if (statement.Length > 0 && statement[0] != '#')
                Statement(Encoding.UTF8.GetString(statement));
        }
        Finish();
        if (objects.Count == 0)
            objects.Add(new(objectName, TriangleMesh.Empty));
        return objects;
    }

    private void Statement(string statement)
    {
        if (statement == "o")
        {
            Finish();
            objectName = text.RestOfLine();
        }
        else if (NoSurface.Contains(statement))
            faults.Remark("", "lines and points, which are no surface", text.Line);
        else if (FreeForm.Contains(statement))
            faults.Raise(
                $"\"{statement}\" is free-form geometry, which is not read",
                "statements of free-form geometry",
                text.Line
            );
        else if (!Skipped.Contains(statement))
            faults.Raise($"\"{Short(statement)}\" is no OBJ statement", "lines that are no OBJ statement", text.Line);
    }

    // A broken vertex keeps its number in lenient reading, so that later faces do not shift; faces that use it are
    // dropped.
    private void Vertex()
    {
        Span<double> position = stackalloc double[3];
        for (int i = 0; i < 3; i++)
        {
            ReadOnlySpan<byte> word = Next();
            bool good =
                double.TryParse(word, NumberStyles.Float, CultureInfo.InvariantCulture, out position[i])
                && double.IsFinite(position[i]);
            if (good)
                continue;
            faults.Raise(Found(word, "a finite coordinate"), "vertices that are not three finite numbers", text.Line);
            position.Fill(double.NaN);
            break;
        }
        coordinates.AddRange(position);
    }

    private void Face()
    {
        corners.Clear();
        for (ReadOnlySpan<byte> word = Next(); word.Length > 0; word = Next())
        {
            if (Corner(word) is not { } index)
            {
                faults.Raise(
                    $"{Found(word, "a corner")} among {coordinates.Count / 3} vertices so far",
                    "faces with a corner that does not exist",
                    text.Line
                );
                return;
            }
            corners.Add(index);
        }
        if (corners.Count is < 3 or > MostCorners)
            faults.Raise(
                $"a face has {corners.Count} corners; 3 to {MostCorners} are read",
                "faces with too few or too many corners",
                text.Line
            );
        else
            AddPolygon();
    }

    /// <summary>
    /// The vertex a corner names: 7, 7/1, 7//3, 7/1/3, or negative counted back from the latest vertex.
    /// </summary>
    private int? Corner(ReadOnlySpan<byte> word)
    {
        int slash = word.IndexOf((byte)'/');
        ReadOnlySpan<byte> number = slash < 0 ? word : word[..slash];
        if (!int.TryParse(number, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out int index))
            return null;
        for (ReadOnlySpan<byte> rest = slash < 0 ? default : word[slash..]; rest.Length > 0; )
        {
            int next = rest[1..].IndexOf((byte)'/');
            ReadOnlySpan<byte> part = next < 0 ? rest[1..] : rest[1..(next + 1)];
            if (
                part.Length > 0
                && !int.TryParse(part, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out _)
            )
                return null;
            rest = next < 0 ? default : rest[(next + 1)..];
        }
        int count = coordinates.Count / 3;
        long vertex = index < 0 ? count + (long)index : index - 1L;
        return vertex >= 0 && vertex < count && !double.IsNaN(coordinates[(int)(3 * vertex)]) ? (int)vertex : null;
    }

    private void AddPolygon()
    {
        points.Clear();
        foreach (int corner in corners)
            points.Add(new(coordinates[3 * corner], coordinates[3 * corner + 1], coordinates[3 * corner + 2]));
        IReadOnlyList<int> cut = triangulator.Cut(CollectionsMarshal.AsSpan(points));
        for (int i = 0; i < cut.Count; i++)
            triangles.Add(corners[cut[i]]);
    }

    private void Finish()
    {
        if (triangles.Count == 0 && objectName.Length == 0)
            return;
        objects.Add(new(objectName, Compact()));
        triangles.Clear();
    }

    /// <summary>The triangles so far with the vertices they use, in file order.</summary>
    private TriangleMesh Compact()
    {
        if (triangles.Count == 0)
            return TriangleMesh.Empty;
        int least = int.MaxValue,
            most = 0;
        foreach (int v in triangles)
            (least, most) = (Math.Min(least, v), Math.Max(most, v));
        return most - least > WideRange * triangles.Count ? CompactWide() : CompactDense(least, most);
    }

    private TriangleMesh CompactDense(int least, int most)
    {
        var map = new int[most - least + 1];
        foreach (int v in triangles)
            map[v - least] = 1;
        var used = new double[3 * map.Sum()];
        for (int i = 0, next = 0; i < map.Length; i++)
        {
            if (map[i] == 0)
                continue;
            coordinates.CopyTo(3 * (i + least), used, 3 * next, 3);
            map[i] = next++;
        }
        var indices = new int[triangles.Count];
        for (int i = 0; i < indices.Length; i++)
            indices[i] = map[triangles[i] - least];
        return TriangleMesh.Adopt(used, indices);
    }

    /// <summary>
    /// Of a few vertices from all over the file: many such objects would each go through all of it.
    /// </summary>
    private TriangleMesh CompactWide()
    {
        int[] vertices = Ascending.Of(triangles);
        var used = new double[3 * vertices.Length];
        for (int i = 0; i < vertices.Length; i++)
            coordinates.CopyTo(3 * vertices[i], used, 3 * i, 3);
        return TriangleMesh.Adopt(used, [.. triangles.Select(v => Array.BinarySearch(vertices, v))]);
    }

    // A backslash at the end of a line continues it; '#' ends it.
    private ReadOnlySpan<byte> Next()
    {
        while (true)
        {
            if (continued)
                text.NextLine();
            ReadOnlySpan<byte> word = text.WordInLine();
            continued = word.EndsWith("\\"u8);
            if (continued)
                word = word[..^1];
            if (word.Length > 0 || !continued)
                return word.StartsWith("#"u8) ? default : word;
        }
    }

    private static string Found(ReadOnlySpan<byte> word, string expected) =>
        word.Length == 0 ? $"{expected} is missing" : $"\"{Short(Encoding.UTF8.GetString(word))}\" is not {expected}";

    private static string Short(string word) => word.Length <= 40 ? word : word[..40];
}
