using CalibGeom.Formats;
using CalibGeom.Formats.Stl;
using CalibGeom.Meshes;

namespace CalibGeom.Plates;

/// <summary>A part in a binary STL file, read anew each time.</summary>
internal sealed class StlFilePart : PlatePart
{
    private readonly string path;
    private readonly string name;
    private readonly (long Length, DateTime Written) stamp;

    /// <param name="path">The file.</param>
    /// <param name="name">What to call it.</param>
    internal StlFilePart(string path, string name)
        : base(Path.GetFileName(name))
    {
        (this.path, this.name) = (path, name);
        stamp = Stamp();
        using StlTriangleStream stream = Open();
        TriangleCount = stream.TriangleCount;
        if (TriangleCount == 0)
            throw new InputException(InputIds.Plate, $"{name} has no facets. Export the mesh again.");
    }

    public override long TriangleCount { get; }

    private protected override void VisitAll(FacetVisitor visit)
    {
        using StlTriangleStream stream = Open();
        for (ReadOnlySpan<StlFacet> block = stream.Next(); block.Length > 0; block = stream.Next())
            visit(block);
        if (Stamp() != stamp)
            throw new InputException(
                InputIds.Plate,
                $"{name} has changed while it was read: somebody is writing it. Wait until it is whole, then run this again."
            );
    }

    private StlTriangleStream Open() => StlTriangleStream.Open(InputFile.Open(path), name);

    private (long, DateTime) Stamp()
    {
        var file = new FileInfo(path);
        return file.Exists ? (file.Length, file.LastWriteTimeUtc) : default;
    }

    public override TriangleMesh ToMesh()
    {
        using FileStream stream = InputFile.Open(path);
        return StlReader.Read(stream, name);
    }
}
