using CalibGeom.Meshes;

namespace CalibGeom.Inspection.Topology;

/// <summary>Counts one kind of defect and keeps the first places.</summary>
internal sealed class DefectLog(DefectKind kind)
{
    private readonly List<Vector3D> places = [];
    private readonly List<int> triangles = [];
    private int count;

    internal void Add(Vector3D place, int triangle)
    {
        if (count++ >= MeshDefect.MostPlaces)
            return;
        places.Add(place);
        triangles.Add(triangle);
    }

    internal MeshDefect Result() => new(kind, count, places, triangles);
}
