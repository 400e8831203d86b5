using CalibGeom.Cli.Shared;
using CalibGeom.Features.Files;
using CalibGeom.Formats;
using CalibGeom.Formats.Obj;
using CalibGeom.Formats.Stl;
using CalibGeom.Formats.ThreeMf;
using CalibGeom.Meshes;
using CalibGeom.Objects;
using CalibGeom.Pictures.Views;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Cli.Make;

/// <summary>The files that <c>make</c> wrote.</summary>
internal sealed record MakeFiles(IReadOnlyList<string> Paths)
{
    /// <summary>Where the object file is; null when none was written.</summary>
    internal string? ObjectPath { get; private init; }

    /// <summary>The extensions that a mesh can be written with, in capitals.</summary>
    internal static IReadOnlyList<string> Extensions { get; } = [".STL", ".3MF", ".OBJ"];

    /// <summary>
    /// Writes the mesh and, beside it, the feature table and the object file; to standard output the mesh alone.
    /// </summary>
    internal static MakeFiles Write(
        CommandIo io,
        MakeRequest request,
        SpecSource source,
        TestObject made,
        TriangleMesh mesh
    )
    {
        string output = request.Output ?? $"{source.Name}.stl";
        if (output == "-")
        {
            using Stream standard = io.OpenOutput();
            WriteMesh(standard, ".STL", source, made, mesh);
            return new MakeFiles([]);
        }
        using var files = io.NewOutputs();
        IReadOnlyList<string> paths = Add(files, output, source, made, mesh);
        IReadOnlyList<string> pictures = MakePictures.Add(files, request, source.Name, made);
        files.Commit();
        return new MakeFiles([.. paths, .. pictures]) { ObjectPath = paths[^1] };
    }

    /// <summary>Adds the mesh, the feature table and the object file; returns their paths in this order.</summary>
    internal static IReadOnlyList<string> Add(
        OutputSet files,
        string output,
        SpecSource source,
        TestObject made,
        TriangleMesh mesh
    )
    {
        string features = Path.ChangeExtension(output, ".features.csv"),
            description = ObjectFile.Beside(output);
        var file = new ObjectFile(source.Name, made.Spec) { Mesh = Path.GetFileName(output) };
        files.Add(
            output,
            stream => WriteMesh(stream, Path.GetExtension(output).ToUpperInvariant(), source, made, mesh)
        );
        files.Add(features, stream => FeatureTableCsv.Write(stream, made.Features));
        files.Add(description, stream => ObjectFileJson.Write(stream, file));
        return [output, features, description];
    }

    private static void WriteMesh(
        Stream stream,
        string extension,
        SpecSource source,
        TestObject made,
        TriangleMesh mesh
    )
    {
        string header = ObjectHeader.Of(source.Name, SpecDigest.Of(made.Spec));
        MeshObject[] objects = [new MeshObject(source.Name, mesh)];
        switch (extension)
        {
            case ".3MF":
                ThreeMfWriter.Write(
                    stream,
                    objects,
                    new ThreeMfContent
                    {
                        Title = header,
                        Application = $"calibgeom {Envelope.Version}",
                        SpecJson = SpecJson.ToText(made.Spec),
                        Thumbnail = ShadedView.ToPng(mesh, null, 384, 288),
                    }
                );
                break;
            case ".OBJ":
                ObjWriter.Write(stream, objects);
                break;
            default:
                StlWriter.Write(stream, mesh, header);
                break;
        }
    }
}
