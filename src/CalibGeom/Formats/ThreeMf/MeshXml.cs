using CalibGeom.Meshes;

namespace CalibGeom.Formats.ThreeMf;

/// <summary>Reads a mesh element without an allocation for each vertex and triangle.</summary>
internal sealed class MeshXml(PartXml xml)
{
    private readonly List<double> coordinates = [];
    private readonly List<int> triangles = [];
    private readonly HashSet<int> broken = [];
    private readonly List<int> propertyIds = [];

    /// <summary>The property groups that triangles refer to.</summary>
    internal IReadOnlyList<int> PropertyIds => propertyIds;

    internal TriangleMesh Read()
    {
        bool vertices = false,
            faces = false;
        xml.Attributes();
        xml.Children(() =>
        {
            if (xml.Namespace != ThreeMfNames.Core)
                return;
            if (xml.LocalName == "vertices" && !vertices)
            {
                vertices = true;
                xml.Attributes();
                xml.Children(Vertex);
            }
            else if (xml.LocalName == "triangles" && vertices && !faces)
            {
                faces = true;
                xml.Attributes();
                xml.Children(Triangle);
            }
            else
                xml.Unknown();
        });
        if (coordinates.Count < 9 || triangles.Count < 3)
            xml.Faults.Raise(
                $"{xml.Place}: a mesh has {coordinates.Count / 3} vertices and {triangles.Count / 3} triangles; "
                    + $"3 and 1 are the least",
                "meshes without triangles"
            );
        DropUnusedVertices();
        return TriangleMesh.Adopt([.. coordinates], [.. triangles]);
    }

    /// <summary>Vertices without a triangle would be multiplied by every component that shows the mesh.</summary>
    private void DropUnusedVertices()
    {
        var numbers = new int[coordinates.Count / 3];
        foreach (int corner in triangles)
            numbers[corner] = 1;
        int kept = 0;
        for (int v = 0; v < numbers.Length; v++)
            numbers[v] = numbers[v] == 0 ? -1 : kept++;
        // A mesh has at least three vertices, also where all its triangles are flat.
        if (kept == numbers.Length || kept < 3)
            return;
        for (int v = 0; v < numbers.Length; v++)
        for (int k = 0; k < 3 && numbers[v] >= 0; k++)
            coordinates[3 * numbers[v] + k] = coordinates[3 * v + k];
        coordinates.RemoveRange(3 * kept, coordinates.Count - 3 * kept);
        for (int i = 0; i < triangles.Count; i++)
            triangles[i] = numbers[triangles[i]];
    }

    // A broken vertex keeps its number, so that the triangles of the others do not shift; triangles that use it are
    // dropped.
    private void Vertex()
    {
        if (!Expect("vertex"))
            return;
        Span<double> position = stackalloc double[3];
        int seen = 0;
        while (xml.NextAttribute())
        {
            int axis = xml.LocalName switch
            {
                "x" => 0,
                "y" => 1,
                "z" => 2,
                _ => -1,
            };
            if (axis < 0)
                xml.Foreign();
            else if (NumberText.TryNumber(xml.Value(), out position[axis]))
                seen |= 1 << axis;
        }
        if (seen != 7)
        {
            xml.Faults.Raise(
                $"{xml.Place}: vertex {coordinates.Count / 3} has not three finite numbers x, y, z",
                "vertices that are not three finite numbers"
            );
            broken.Add(coordinates.Count / 3);
            position.Clear();
        }
        coordinates.AddRange(position);
    }

    private void Triangle()
    {
        if (!Expect("triangle"))
            return;
        Span<int> corners = [-1, -1, -1];
        while (xml.NextAttribute())
        {
            switch (xml.LocalName)
            {
                case "v1":
                    Index(xml.Value(), out corners[0]);
                    break;
                case "v2":
                    Index(xml.Value(), out corners[1]);
                    break;
                case "v3":
                    Index(xml.Value(), out corners[2]);
                    break;
                case "pid":
                    PropertyId();
                    break;
                case "p1" or "p2" or "p3":
                    break;
                default:
                    xml.Foreign();
                    break;
            }
        }
        foreach (int corner in corners)
            if (corner < 0 || corner >= coordinates.Count / 3 || broken.Contains(corner))
            {
                xml.Faults.Raise(
                    $"{xml.Place}: triangle {triangles.Count / 3} names a vertex that is not among the "
                        + $"{coordinates.Count / 3}",
                    "triangles with a vertex that does not exist"
                );
                return;
            }
        triangles.AddRange(corners);
    }

    private void PropertyId()
    {
        if (!NumberText.TryIndex(xml.Value(), out int id))
            xml.Faults.Raise($"{xml.Place}: pid is no resource id", "properties that do not exist");
        else if (propertyIds.Count == 0 || propertyIds[^1] != id)
            propertyIds.Add(id);
    }

    private bool Expect(string name)
    {
        if (xml.Namespace != ThreeMfNames.Core)
            return false;
        if (xml.LocalName == name)
            return true;
        xml.Unknown();
        return false;
    }

    private static void Index(ReadOnlySpan<char> text, out int index)
    {
        if (!NumberText.TryIndex(text, out index))
            index = -1;
    }
}
