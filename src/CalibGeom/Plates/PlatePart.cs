using CalibGeom.Meshes;

namespace CalibGeom.Plates;

/// <summary>
/// A production part on the plate, as facets in plate coordinates that can be gone through again and again. Its facets are never changed.
/// </summary>
public abstract class PlatePart
{
    private protected PlatePart(string name) => Name = name;

    /// <summary>What the part is called in messages and 3MF files.</summary>
    public string Name { get; }

    /// <summary>Goes through all facets in order.</summary>
    /// <param name="visit">Called with one block after another.</param>
    /// <exception cref="InputException">The part cannot be read.</exception>
    public abstract void Visit(FacetVisitor visit);

    /// <summary>The part as a mesh, which takes memory in proportion to its size.</summary>
    /// <exception cref="InputException">The part cannot be read.</exception>
    public abstract TriangleMesh ToMesh();

    /// <summary>A part that is in memory; its facets are its triangles with coordinates rounded to 32-bit floats.</summary>
    /// <param name="name">What it is called.</param>
    /// <param name="mesh">Its triangles, in plate coordinates.</param>
    /// <exception cref="ArgumentException">The mesh has no triangles.</exception>
    public static PlatePart FromMesh(string name, TriangleMesh mesh) => new MeshPart(name, mesh);

    /// <summary>A part in a binary STL file, which is read block by block each time and never held in memory.</summary>
    /// <param name="path">The file.</param>
    /// <exception cref="InputException">There is no such file, it is no binary STL, its length does not agree with its count, or it has no facets.</exception>
    public static PlatePart FromBinaryStl(string path) => new StlFilePart(path);
}
