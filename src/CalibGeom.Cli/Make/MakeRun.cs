using CalibGeom.Cli.Shared;
using CalibGeom.Meshes;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Cli.Make;

/// <summary>One run of <c>make</c>.</summary>
internal static class MakeRun
{
    internal static int Run(CommandIo io, MakeRequest request)
    {
        RequireSense(request);
        if (request.Output == "-" && io.OutputIsTerminal)
            throw new InputException(
                InputIds.Option,
                "-o - writes an STL, which no terminal shows. Name a file, or lead it into a pipe."
            );
        if (request.Mark is < 0 or > 6)
            throw new InputException(
                InputIds.Option,
                $"--mark must be 0 to 6, not {request.Mark}. A box's rim has no room for more."
            );
        if (request.Sweeps.Count > 0)
            return MakeSweep.Run(io, request);
        SpecSource source = request.Source;
        // Made ready beside the layout: writing JSON for the first time takes a fifth of a cold start.
        _ = Task.Run(() => SpecDigest.Of(source.Spec));
        TestObject made = TestObject.Of(source.Spec, request.Mark);
        IReadOnlyList<Finding> findings = made.CheckAsPrinted();
        bool failing = findings.Any(f => f.Severity == Severity.Error);
        TriangleMesh? mesh = failing || request.Check ? null : made.ToMesh();
        MakeFiles? files = mesh is null ? null : MakeFiles.Write(io, request, source, made, mesh);
        TextWriter result = request.Output == "-" ? io.Error : io.Out;
        if (request.Json)
            Envelope.Write(result, "make", findings, MakeResult.Describe(source, made, mesh, files));
        else
            WriteText(io, result, source, made, mesh, files);
        if (failing)
            io.Error.WriteLine("The design cannot work as it stands; nothing was written.");
        return failing ? ExitCode.Finding : ExitCode.Done;
    }

    private static void WriteText(
        CommandIo io,
        TextWriter result,
        SpecSource source,
        TestObject made,
        TriangleMesh? mesh,
        MakeFiles? files
    )
    {
        MakeReport.Write(result, source, made, mesh);
        FindingText.Write(result, made.CheckAsPrinted());
        foreach (string path in files?.Paths ?? [])
            io.Say($"wrote {path}");
        if (files?.ObjectPath is { } written)
            NextCommand.Readings(io, written);
        io.SayCaution();
    }

    private static void RequireSense(MakeRequest request)
    {
        if (request is { Check: true, Output: not null })
            throw new InputException(InputIds.Option, "--check writes nothing; leave --check or -o away.");
        MakePictures.RequireSense(request);
        MakeSweep.RequireSense(request);
        if (request is { Json: true, Output: "-" })
            throw new InputException(
                InputIds.Option,
                "--json and -o - would both write to standard output; name a file."
            );
        if (
            request.Output is { } output
            && output != "-"
            && !MakeFiles.Extensions.Contains(Path.GetExtension(output).ToUpperInvariant())
        )
            throw new InputException(
                InputIds.Option,
                $"{output}: the name must end in .stl, .3mf or .obj. Use - for standard output."
            );
    }
}
