using CalibGeom.Objects;

namespace CalibGeom.Cli.Place;

/// <summary>
/// Which files <c>place</c> writes, and that none of them is one it reads: a production part must outlive the run.
/// </summary>
internal static class PlacePaths
{
    private static readonly StringComparer Names = OperatingSystem.IsLinux()
        ? StringComparer.Ordinal
        : StringComparer.OrdinalIgnoreCase;

    internal static string Features(string output) => Path.ChangeExtension(output, ".features.csv");

    /// <exception cref="InputException">An output is also a part or the spec.</exception>
    internal static void RequireApart(PlaceRequest request)
    {
        var inputs = request
            .Parts.Append(request.SpecPath)
            .OfType<string>()
            .Where(p => p is not ("" or "-"))
            .Select(Real)
            .ToHashSet(Names);
        foreach (string output in Outputs(request))
            if (inputs.Contains(Real(output)))
                throw new InputException(
                    $"{output} is read in this run and would be overwritten. Name another file to write."
                );
    }

    private static IEnumerable<string> Outputs(PlaceRequest request)
    {
        if (request.Output != "-")
            yield return request.Output;
        if (request.Output != "-")
            yield return Features(request.Output);
        if (request.Output != "-")
            yield return ObjectFile.Beside(request.Output);
        if (request.Picture is { } picture)
            yield return picture;
    }

    /// <summary>A link stands for the file it leads to.</summary>
    private static string Real(string path)
    {
        var file = new FileInfo(path);
        return file.LinkTarget is null
            ? file.FullName
            : file.ResolveLinkTarget(returnFinalTarget: true)?.FullName ?? file.FullName;
    }
}
