using CalibGeom.Cli.Shared;
using CalibGeom.Features.Files;
using CalibGeom.Pictures.Drawings;
using CalibGeom.Pictures.Objects;
using CalibGeom.TestObjects;

namespace CalibGeom.Cli.Make;

/// <summary>Bench sheet and picture, written together with the mesh.</summary>
internal static class MakePictures
{
    /// <summary>Refuses what cannot be written, before any work is done.</summary>
    /// <exception cref="InputException">A name ends otherwise, or pictures are asked for without a mesh
    /// file.</exception>
    internal static void RequireSense(MakeRequest request)
    {
        if (request.Sheet is { } sheet)
            SheetFile.RequireName(sheet);
        if (request.Picture is { } picture)
            Drawing.RequireName(picture);
        if ((request.Check || request.Output == "-") && (request.Sheet ?? request.Picture) is not null)
            throw new InputException(
                InputIds.Option,
                "--sheet and --picture are written beside the mesh: name a file with -o, and leave --check away."
            );
    }

    /// <summary>Adds what is asked for; returns its paths.</summary>
    internal static IReadOnlyList<string> Add(OutputSet files, MakeRequest request, string name, TestObject made)
    {
        var paths = new List<string>();
        if (request.Sheet is { } sheet)
        {
            SheetFile.Add(files, sheet, made, name);
            paths.Add(sheet);
        }
        if (request.Picture is { } picture)
        {
            files.Add(picture, stream => NumberedView.Draw(made, name).Write(picture, stream));
            paths.Add(picture);
        }
        return paths;
    }
}
