using System.Text.Json.Nodes;
using CalibGeom.Cli.Place;
using CalibGeom.Cli.Shared;
using CalibGeom.Formats;
using CalibGeom.Inspection;
using CalibGeom.Inspection.Layers;
using CalibGeom.Plates;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Comparison;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Cli.Inspect;

/// <summary>One run of <c>inspect</c>.</summary>
internal static class InspectRun
{
    // About the share of time that reading a large mesh takes.
    private const double Reading = 0.15;

    /// <exception cref="InputException">A value is out of range, or a file cannot be used.</exception>
    internal static int Run(CommandIo io, InspectRequest request)
    {
        LayerSettings settings = Settings(request);
        TestObject? wanted = request.Against is null ? null : Wanted(io, request.Against);
        Inspected[] all = request.Files.Select(f => Inspect(io, request, f, settings, wanted)).ToArray();
        if (request.Json)
            Envelope.Write(
                io.Out,
                "inspect",
                all.SelectMany(a => a.Report.Findings),
                new JsonArray(all.Select(InspectText.Describe).ToArray())
            );
        else
            foreach (Inspected one in all)
                InspectText.Write(io.Out, one);
        return all.Any(a => a.Report.Verdict != MeshVerdict.Ready) ? ExitCode.Finding : ExitCode.Done;
    }

    private static LayerSettings Settings(InspectRequest request)
    {
        RequireRange("--layer", request.Layer);
        RequireRange("--pixel", request.Pixel);
        double[]? plate = request.Plate is null ? null : PlateText.Parse(request.Plate);
        return new LayerSettings
        {
            LayerHeight = request.Layer,
            PixelX = request.Pixel,
            PixelY = request.Pixel,
            Plate = plate is null ? null : new Plate(plate[0], plate[1], plate.Length == 3 ? plate[2] : null),
        };
    }

    private static void RequireRange(string option, double value)
    {
        if (!(value >= 0.001 && value <= 10))
            throw new InputException(
                FormattableString.Invariant($"{option} {value} is out of range. Give millimetres from 0.001 to 10.")
            );
    }

    private static TestObject Wanted(CommandIo io, string spec)
    {
        TestObject made = TestObjectBuilder.Build(SpecSource.Load(io, spec, null, []).Spec);
        return made.Solid is not null
            ? made
            : throw new InputException(
                $"{spec}: this spec has design errors, so there is nothing to compare with. See calibgeom make --check."
            );
    }

    private static Inspected Inspect(
        CommandIo io,
        InspectRequest request,
        string path,
        LayerSettings settings,
        TestObject? wanted
    )
    {
        using ProgressBar? bar = io.Interactive ? new ProgressBar(io.Error, io.Clock) : null;
        MeshFile file = Read(io, path, request.Lenient, bar?.Step(0, Reading));
        return new Inspected(
            path,
            FileInspection.Run(file, path, settings, wanted, bar?.Step(Reading, 1)),
            wanted is not null
        );
    }

    private static MeshFile Read(CommandIo io, string path, bool lenient, IProgress<double>? progress)
    {
        if (path != "-")
            return MeshFile.Read(path, lenient, progress);
        using Stream input = io.OpenInput();
        return MeshFile.Read(input, "standard input", lenient, progress);
    }
}
