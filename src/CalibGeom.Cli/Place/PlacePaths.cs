using CalibGeom.Objects;

namespace CalibGeom.Cli.Place;

/// <summary>Which files <c>place</c> writes.</summary>
internal static class PlacePaths
{
    internal static string Features(string output) => Path.ChangeExtension(output, ".features.csv");

    internal static IEnumerable<string> Outputs(PlaceRequest request)
    {
        if (request.Output != "-")
        {
            yield return request.Output;
            yield return Features(request.Output);
            yield return ObjectFile.Beside(request.Output);
        }
        if (request.Picture is { } picture)
            yield return picture;
    }
}
