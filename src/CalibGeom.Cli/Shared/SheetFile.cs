using CalibGeom.Features.Files;
using CalibGeom.Pictures.BenchSheet;
using CalibGeom.TestObjects;

namespace CalibGeom.Cli.Shared;

/// <summary>The bench sheet as one of a command's outputs.</summary>
internal static class SheetFile
{
    /// <summary>Refuses a name that is no HTML file, before any work is done.</summary>
    /// <exception cref="InputException">The name ends otherwise.</exception>
    internal static void RequireName(string path)
    {
        if (!path.EndsWith(".html", StringComparison.OrdinalIgnoreCase))
            throw new InputException(
                InputIds.Option,
                $"{path}: a bench sheet is an HTML file. Let its name end in .html."
            );
    }

    /// <exception cref="InputException">The design cannot work.</exception>
    internal static TestObject Build(SpecSource source)
    {
        TestObject made = TestObject.Of(source.Spec);
        return made.HasErrors
            ? throw new InputException(
                InputIds.Spec,
                $"{source.Name} cannot be made, so there is nothing to measure: "
                    + $"{made.Findings.First(f => f.Severity == Severity.Error).Message} See \"calibgeom make --check\"."
            )
            : made;
    }

    internal static void Add(OutputSet files, string path, TestObject made, string name)
    {
        RequireName(path);
        files.Add(path, stream => BenchSheetPage.Write(stream, made, name));
    }
}
