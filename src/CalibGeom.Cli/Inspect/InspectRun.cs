using System.Text.Json.Nodes;
using CalibGeom.Cli.Place;
using CalibGeom.Cli.Shared;
using CalibGeom.Formats;
using CalibGeom.Inspection.Layers;
using CalibGeom.Inspection.Topology;
using CalibGeom.Meshes;
using CalibGeom.Plates;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Comparison;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Cli.Inspect;

/// <summary>One run of <c>inspect</c>.</summary>
internal static class InspectRun
{
    // About the shares of time that reading, the surface and the layers of a large mesh take.
    private const double Reading = 0.15,
        Surface = 0.5;

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
                all.SelectMany(a => a.Findings),
                new JsonArray(all.Select(InspectText.Describe).ToArray())
            );
        else
            foreach (Inspected one in all)
                InspectText.Write(io.Out, one);
        return all.Any(a => a.Worst > Severity.Note) ? ExitCode.Finding : ExitCode.Done;
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
        TriangleMesh mesh = file.ToMesh();
        TopologyReport topology = MeshTopology.Examine(mesh, bar?.Step(Reading, Surface));
        LayerReport layers = Layers(path, mesh, settings, bar?.Step(Surface, 1));
        TestObject? ours = wanted ?? Carried(file);
        bool named = ours is not null && mesh.TriangleCount > 0;
        var findings = new List<Finding>(
            file.Dropped.Select(d => new Finding(
                "left-out",
                request.Lenient ? Severity.Warning : Severity.Note,
                path,
                d,
                ""
            ))
        );
        Func<Vector3D, string>? nameOf = named ? SpecComparison.Names(mesh, ours!) : null;
        findings.AddRange(topology.ToFindings(nameOf, layers.LayerAt));
        findings.AddRange(layers.ToFindings(nameOf));
        if (wanted is not null)
            findings.AddRange(SpecComparison.Check(mesh, wanted));
        return new Inspected(
            path,
            topology,
            layers,
            findings.OrderByDescending(f => f.Severity).ToArray(),
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

    /// <summary>
    /// The object that a 3MF of ours carries; a spec from elsewhere that does not read names nothing.
    /// </summary>
    private static TestObject? Carried(MeshFile file)
    {
        if (file.SpecJson is null)
            return null;
        try
        {
            TestObject made = TestObjectBuilder.Build(SpecJson.Parse(file.SpecJson));
            return made.Solid is null ? null : made;
        }
        catch (InputException)
        {
            return null;
        }
    }

    private static LayerReport Layers(
        string path,
        TriangleMesh mesh,
        LayerSettings settings,
        IProgress<double>? progress
    )
    {
        try
        {
            return LayerInspection.Run(mesh, settings, progress);
        }
        catch (ArgumentOutOfRangeException e)
        {
            throw new InputException($"{path}: {e.Message.Split('\n')[0]}", e);
        }
    }
}
