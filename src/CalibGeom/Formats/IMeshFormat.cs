using CalibGeom.Formats.Obj;
using CalibGeom.Formats.Stl;
using CalibGeom.Formats.ThreeMf;

namespace CalibGeom.Formats;

/// <summary>
/// One mesh format: how it is told, read and written. A new one is a folder with a class like this and a line in
/// <see cref="All"/>.
/// </summary>
internal interface IMeshFormat
{
    /// <summary>All formats, in the order in which they are tried.</summary>
    static IReadOnlyList<IMeshFormat> All { get; } =
    [new StlBinaryFormat(), new ThreeMfFormat(), new StlAsciiFormat(), new ObjFormat()];

    /// <summary>Which it is.</summary>
    MeshFormat Format { get; }

    /// <summary>The name's end, with its point, by which writing chooses it; null when it is not written.</summary>
    string? Extension { get; }

    /// <summary>Whether a file is of this format, by its beginning.</summary>
    bool Recognises(FileSample sample);

    /// <summary>Reads a file.</summary>
    /// <exception cref="InputException">A fault that reading cannot pass over.</exception>
    MeshFile Read(Stream stream, Faults faults);

    /// <summary>Writes meshes.</summary>
    /// <param name="stream">Where to; left open.</param>
    /// <param name="objects">At least one.</param>
    /// <param name="content">Title, which an STL takes as its header, application and spec.</param>
    void Write(Stream stream, IReadOnlyList<MeshObject> objects, ThreeMfContent content);
}
