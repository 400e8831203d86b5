using System.Text.Json.Nodes;
using CalibGeom.Cli.Place;
using CalibGeom.Cli.Shared;
using CalibGeom.Cli.Shared.Terminals;
using CalibGeom.Formats;
using CalibGeom.Inspection;
using CalibGeom.Inspection.Layers;
using CalibGeom.Objects;
using CalibGeom.Plates;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Comparison;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Cli.Inspect;

/// <summary>One run of <c>inspect</c>.</summary>
internal sealed class InspectRun(CommandIo io, InspectRequest request)
{
    // About the share of time that reading a large mesh takes.
    private const double Reading = 0.15;

    private readonly List<Inspected> all = [];
    private readonly List<Finding> unreadable = [];

    /// <exception cref="InputException">A value is out of range, or the only file cannot be used.</exception>
    internal int Run()
    {
        Settings(null);
        foreach (string path in request.Files)
            Add(path);
        if (request.Json)
            Envelope.WriteFiles(
                io.Out,
                "inspect",
                [.. all.SelectMany(a => a.Report.Findings.Select(f => new FileFinding(a.Path, f))), .. Failures()],
                new JsonArray(all.Select(InspectText.Describe).ToArray())
            );
        else
            foreach (Inspected one in all)
                InspectText.Write(io.Out, one);
        if (unreadable.Count > 0)
            return ExitCode.BadUse;
        return all.Any(a => a.Report.Verdict != MeshVerdict.Ready) ? ExitCode.Finding : ExitCode.Done;
    }

    private IEnumerable<FileFinding> Failures() => unreadable.Select(f => new FileFinding(f.Subject, f));

    /// <summary>Of several files the sound ones are answered although one cannot be read.</summary>
    private void Add(string path)
    {
        try
        {
            all.Add(Inspect(path));
        }
        catch (Exception e)
            when (request.Files.Count > 1 && e is InputException or IOException or UnauthorizedAccessException)
        {
            io.Error.WriteLine($"calibgeom inspect: {e.Message}");
            unreadable.Add(new Finding("unreadable", Severity.Error, path, e.Message, ""));
        }
    }

    private Inspected Inspect(string path)
    {
        ObjectFile? against = request.Against?.Invoke(path);
        using ProgressBar? bar = ProgressBar.For(io, "inspecting");
        MeshFile file = Read(path, bar?.Step(0, Reading));
        LayerSettings settings = Settings(against?.Spec.Process ?? Carried(file));
        TestObject? wanted = against is { Coupons.Count: 0 } ? Made(against) : null;
        MeshReport report = FileInspection.Run(file, path, settings, wanted, bar?.Step(Reading, 1));
        if (against is { Coupons.Count: > 0 })
            report = report.With(ObjectComparison.Check(file.ToMesh(), against));
        return new Inspected(path, report, against is not null);
    }

    private LayerSettings Settings(ProcessSpec? process)
    {
        LayerSettings usual = ProcessLayers.Of(process);
        double layer = request.Layer ?? usual.LayerHeight;
        PerAxis pixel = request.Pixel is { } text
            ? PixelText.Parse(text, 0.001, 10)
            : new PerAxis(usual.PixelX, usual.PixelY);
        if (!(layer >= 0.001 && layer <= 10))
            throw new InputException(
                InputIds.Option,
                FormattableString.Invariant($"--layer {layer} is out of range. Give millimetres from 0.001 to 10.")
            );
        double[]? plate = request.Plate is null ? null : PlateText.Parse(request.Plate);
        return usual with
        {
            LayerHeight = layer,
            PixelX = pixel.X,
            PixelY = pixel.Y,
            Plate = plate is null ? null : new Plate(plate[0], plate[1], plate.Length == 3 ? plate[2] : null),
        };
    }

    private static TestObject Made(ObjectFile file)
    {
        TestObject made = TestObject.Of(file.Spec);
        return made.Solid is not null
            ? made
            : throw new InputException(
                InputIds.ObjectFile,
                $"{file.Name}: this object has design errors, so there is nothing to compare with. See calibgeom make "
                    + "--check."
            );
    }

    /// <summary>The process that a 3MF of ours carries.</summary>
    private static ProcessSpec? Carried(MeshFile file)
    {
        try
        {
            return file.SpecJson is { } spec ? SpecJson.Parse(spec).Process : null;
        }
        catch (InputException)
        {
            return null; // A spec from elsewhere says nothing here.
        }
    }

    private MeshFile Read(string path, IProgress<double>? progress)
    {
        if (path != "-")
        {
            WrongFile.RequireNoOther(path, InputKind.Mesh);
            return MeshFile.Read(path, request.Lenient, progress);
        }
        using Stream input = io.OpenInput();
        return MeshFile.Read(input, "standard input", request.Lenient, progress);
    }
}
