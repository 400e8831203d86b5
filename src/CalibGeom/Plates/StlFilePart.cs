using CalibGeom.Formats.Stl;
using CalibGeom.Meshes;

namespace CalibGeom.Plates;

/// <summary>A part in a binary STL file, read anew each time.</summary>
internal sealed class StlFilePart : PlatePart
{
    private readonly string path;
    private readonly (long Length, DateTime Written) stamp;

    internal StlFilePart(string path)
        : base(Path.GetFileName(path))
    {
        this.path = path;
        stamp = Stamp();
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
        if (Stamp() != stamp)
            throw new InputException(
                $"{path} has changed while it was read: somebody is writing it. Wait until it is whole, then run this again."
            );
    }

    private (long, DateTime) Stamp()
    {
        var file = new FileInfo(path);
        return file.Exists ? (file.Length, file.LastWriteTimeUtc) : default;
    }

    public override TriangleMesh ToMesh() => StlReader.Read(path);
}
