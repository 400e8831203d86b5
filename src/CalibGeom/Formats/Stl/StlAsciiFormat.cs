using CalibGeom.Formats.ThreeMf;

namespace CalibGeom.Formats.Stl;

/// <summary>ASCII STL: read only, since it takes five times the bytes and rounds what it says.</summary>
internal sealed class StlAsciiFormat : IMeshFormat
{
    public MeshFormat Format => MeshFormat.StlAscii;

    public string? Extension => null;

    public bool Recognises(FileSample sample) => sample.FirstWord.Equals("solid", StringComparison.OrdinalIgnoreCase);

    public MeshFile Read(Stream stream, Faults faults) =>
        new(Format, new StlAsciiReader(stream, faults).Read(), faults);

    public void Write(Stream stream, IReadOnlyList<MeshObject> objects, ThreeMfContent content) =>
        throw new NotSupportedException("ASCII STL is read only.");
}
