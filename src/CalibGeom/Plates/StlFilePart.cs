using CalibGeom.Formats.Stl;
using CalibGeom.Meshes;

namespace CalibGeom.Plates;

/// <summary>A part in a binary STL file, read anew each time.</summary>
internal sealed class StlFilePart : PlatePart
{
    private readonly string path;

    internal StlFilePart(string path)
        : base(Path.GetFileName(path))
    {
        this.path = path;
        using StlTriangleStream stream = StlTriangleStream.Open(path);
        TriangleCount = stream.TriangleCount;
        if (TriangleCount == 0)
            throw new InputException($"{path} has no facets. Export the mesh again.");
    }

    public override long TriangleCount { get; }

    private protected override void VisitAll(FacetVisitor visit)
    {
        using StlTriangleStream stream = StlTriangleStream.Open(path);
        for (ReadOnlySpan<StlFacet> block = stream.Next(); block.Length > 0; block = stream.Next())
            visit(block);
    }

    public override TriangleMesh ToMesh() => StlReader.Read(path);
}
