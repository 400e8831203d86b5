using CalibGeom.Formats;
using CalibGeom.Meshes;

namespace CalibGeom.Plates;

/// <summary>
/// A production part on the plate, as facets in plate coordinates that can be gone through again and again. Its facets
/// are never changed. Not safe to share between threads: what is told of progress is set on it.
/// </summary>
public abstract class PlatePart
{
    private protected PlatePart(string name) => Name = name;

    /// <summary>What the part is called in messages and 3MF files.</summary>
    public string Name { get; }

    /// <summary>
    /// What of its file was not read: a note where that cannot change the geometry, a warning where damage was passed
    /// over.
    /// </summary>
    public IReadOnlyList<Finding> LeftOut { get; private init; } = [];

    /// <summary>The number of facets.</summary>
    public abstract long TriangleCount { get; }

    /// <summary>
    /// Told after each block what share of the present pass has been gone through, 0 to 1; null (default) for nobody.
    /// </summary>
    public IProgress<double>? Progress { get; set; }

    /// <summary>Goes through all facets in order.</summary>
    /// <param name="visit">Called with one block after another.</param>
    /// <exception cref="InputException">The part cannot be read.</exception>
    public void Visit(FacetVisitor visit)
    {
        ArgumentNullException.ThrowIfNull(visit);
        if (Progress is not { } progress)
        {
            VisitAll(visit);
            return;
        }
        long done = 0;
        VisitAll(facets =>
        {
            visit(facets);
            done += facets.Length;
            progress.Report((double)done / TriangleCount);
        });
    }

    private protected abstract void VisitAll(FacetVisitor visit);

    /// <summary>The part as a mesh, which takes memory in proportion to its size.</summary>
    /// <exception cref="InputException">The part cannot be read.</exception>
    public abstract TriangleMesh ToMesh();

    /// <summary>
    /// A part that is in memory; its facets are its triangles with coordinates rounded to 32-bit floats.
    /// </summary>
    /// <param name="name">What it is called.</param>
    /// <param name="mesh">Its triangles, in plate coordinates.</param>
    /// <exception cref="ArgumentException">The mesh has no triangles.</exception>
    public static PlatePart Of(string name, TriangleMesh mesh) => new MeshPart(name, mesh);

    /// <summary>
    /// A part in a mesh file: binary STL is read block by block each time, ASCII STL, OBJ and 3MF are held in memory.
    /// </summary>
    /// <param name="path">The file; its format is told by its content.</param>
    /// <param name="lenient">Whether to take what is whole of a damaged file, held in memory; <see cref="LeftOut"/> says
    /// what is missing then. False by default.</param>
    /// <param name="name">What to call it in messages and, without its folders, on the plate; the path by
    /// default.</param>
    /// <exception cref="InputException">There is no such file, it is no mesh, it is damaged, or it has no
    /// triangles.</exception>
    public static PlatePart Open(string path, bool lenient = false, string? name = null)
    {
        name ??= path;
        using FileStream stream = InputFile.Open(path);
        if (!lenient && FormatSniffer.Decide(stream, new Faults(name, lenient: false)).Format == MeshFormat.StlBinary)
            return new StlFilePart(path, name);
        stream.Position = 0;
        MeshFile file = MeshFile.Read(stream, name, lenient);
        TriangleMesh mesh = file.ToMesh();
        if (mesh.TriangleCount == 0)
            throw new InputException(InputIds.Plate, $"{name} has no triangles. Export the mesh again.");
        return new MeshPart(Path.GetFileName(name), mesh) { LeftOut = file.LeftOut(name) };
    }
}
