using CalibGeom.Formats.ThreeMf;

namespace CalibGeom.Formats.Obj;

/// <summary>Wavefront OBJ: named objects without transforms.</summary>
internal sealed class ObjFormat : IMeshFormat
{
    public MeshFormat Format => MeshFormat.Obj;

    public string Extension => ".obj";

    public bool Recognises(FileSample sample) => sample.FirstWord == "#" || ObjReader.IsStatement(sample.FirstWord);

    public MeshFile Read(Stream stream, Faults faults) => new(Format, new ObjReader(stream, faults).Read(), faults);

    public void Write(Stream stream, IReadOnlyList<MeshObject> objects, ThreeMfContent content) =>
        ObjWriter.Write(stream, [.. objects.Select(o => new MeshObject(o.Name, o.Placed()))]);
}
