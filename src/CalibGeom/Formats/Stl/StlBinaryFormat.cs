using CalibGeom.Formats.ThreeMf;
using CalibGeom.Meshes;

namespace CalibGeom.Formats.Stl;

/// <summary>Binary STL: one mesh; the title is its header.</summary>
internal sealed class StlBinaryFormat : IMeshFormat
{
    public MeshFormat Format => MeshFormat.StlBinary;

    public string Extension => ".stl";

    public bool Recognises(FileSample sample) =>
        sample.NumberAt(StlWriter.HeaderLength) is { } declared && StlLength.Agrees(sample.Length, declared);

    public MeshFile Read(Stream stream, Faults faults) => new(Format, [StlReader.ReadBinary(stream, faults)], faults);

    public void Write(Stream stream, IReadOnlyList<MeshObject> objects, ThreeMfContent content) =>
        StlWriter.Write(stream, TriangleMesh.Join([.. objects.Select(o => o.Placed())]), content.Title);
}
