using System.Text;
using System.Text.Json.Nodes;
using CalibGeom.Cli.Shared;
using CalibGeom.Cli.Shared.Outputs;
using CalibGeom.Light;
using CalibGeom.Pictures.Drawings;
using CalibGeom.Pictures.Light;
using CalibGeom.TestObjects;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Cli.Simulate;

/// <summary>Prints a test object that never was, and writes its readings.</summary>
internal static class SimulateRun
{
    internal static int Run(CommandIo io, SimulateRequest request)
    {
        if (request.Pixel is null && (request.Grey || request.Plot is not null))
            throw new InputException(
                InputIds.Option,
                $"{(request.Grey ? "--grey says how pixels are lit" : "--plot draws lit pixels")}. Give their "
                    + $"size too: --pixel {PixelText.Help}."
            );
        if (request.Plot is { } name)
            Drawing.RequireName(name);
        Finding[] findings = [.. request.Light.Check()];
        PredictedPrint printed = request.Pixel is { } pitch
            ? FromPixels(request, pitch)
            : new PrintedObject(
                request.Made,
                request.Blur,
                request.Light,
                request.Scale,
                request.Retreat,
                request.EdgeOffset
            );
        IReadOnlyList<Reading> readings = new VirtualPrint(
            printed,
            new SurvivalLaw(request.ColumnLimit),
            request.Squeeze
        ).Read(request.Seed, request.Repeats, request.CaliperSeed);
        if (!request.Json)
            FindingText.Write(io.Error, findings);
        Write(io, request, printed, Text(request.Made, readings));
        if (request.Json)
            Envelope.Write(io.Out, "simulate", findings, Json(request, readings));
        return ExitCode.Done;
    }

    private static RasterPrint FromPixels(SimulateRequest request, PerAxis pitch)
    {
        if (request.Made.Spec.Tilt.Angle != 0)
            throw new InputException(
                InputIds.Option,
                "With --pixel the sizes of a tilted object are not computed. Leave out --pixel, or simulate the "
                    + "object without tilt."
            );
        return new RasterPrint(
            request.Made,
            RasterPrint.LightOf(request.Made, pitch, request.Blur, request.Light, request.Grey, request.EdgeOffset),
            request.Scale,
            request.Retreat
        );
    }

    private static void Write(CommandIo io, SimulateRequest request, PredictedPrint printed, string csv)
    {
        bool toFile = request.Output != "-";
        using (var outputs = io.NewOutputs())
        {
            if (toFile)
                outputs.Add(request.Output, s => s.Write(Encoding.UTF8.GetBytes(csv)));
            if (request.Plot is { } plot)
                outputs.Add(plot, s => DosePicture.Draw((RasterPrint)printed).Write(plot, s));
            outputs.Commit();
        }
        if (toFile)
            io.Say($"wrote {request.Output}");
        else if (!request.Json)
            io.Out.Write(csv);
    }

    private static string Text(TestObject made, IReadOnlyList<Reading> readings) =>
        ReadingsFile.ToText(readings, made.Features.Digest, PartState.Dry, Material.Rigid, OwnFile.SimulatedRemark);

    private static JsonObject Json(SimulateRequest request, IReadOnlyList<Reading> readings) =>
        new()
        {
            ["output"] = request.Output == "-" ? null : request.Output,
            ["digest"] = request.Made.Features.Digest,
            ["readings"] = new JsonArray(
                readings
                    .Select(r =>
                        (JsonNode)
                            new JsonObject
                            {
                                ["feature"] = r.Feature.ToString(),
                                ["value"] = r.Kind is ReadingKind.Size or ReadingKind.Count
                                    ? Math.Round(r.Value, 6)
                                    : ReadingWords.Of(r),
                            }
                    )
                    .ToArray()
            ),
        };
}
