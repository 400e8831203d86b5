namespace CalibGeom.Formats.ThreeMf;

/// <summary>3MF: named objects, each with the transform of its build item.</summary>
internal sealed class ThreeMfFormat : IMeshFormat
{
    public MeshFormat Format => MeshFormat.ThreeMf;

    public string Extension => ".3mf";

    public bool Recognises(FileSample sample) => sample.Bytes.StartsWith("PK"u8);

    public MeshFile Read(Stream stream, Faults faults) => ThreeMfReader.Read(stream, faults);

    public void Write(Stream stream, IReadOnlyList<MeshObject> objects, ThreeMfContent content) =>
        ThreeMfWriter.Write(stream, objects, content);
}
