using CalibGeom.Features.Files;
using CalibGeom.Formats;
using CalibGeom.Formats.Obj;
using CalibGeom.Formats.Stl;
using CalibGeom.Formats.ThreeMf;
using CalibGeom.Meshes;
using CalibGeom.Objects;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;
using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Trends;
using CalibGeom.Verification.Tuning;
using CalibGeom.Verification.Tuning.Beginnings;

namespace CalibGeom.Light.Tests.Stopping;

/// <summary>Everything that can be stopped and is not among <see cref="LongOperations"/>.</summary>
internal static class TokenOnlyOperations
{
    private static readonly TestObject Made = TestObject.Of(Presets.Witness);
    private static readonly TriangleMesh Mesh = Made.ToMesh();
    private static readonly MeshObject[] Objects = [new("witness", Mesh)];
    private static readonly Trial[] Trials = WorkOfPrints.Trials(3);

    internal static IReadOnlyDictionary<string, Func<CancellationToken, Task>> All { get; } =
        new Dictionary<string, Func<CancellationToken, Task>>
        {
            ["TestObject.ToMesh"] = Now(stop => TestObject.Of(Presets.Witness).ToMesh(stop)),
            ["Solid.ToMesh"] = Now(stop => Made.Solid!.ToMesh(stop)),
            ["MaskStack.Of"] = Now(stop =>
                MaskStack.Of(Mesh, Slicing.PixelGrid.Covering(Mesh.Bounds, 1, 1), 1, cancellation: stop)
            ),
            ["ExposureResponse.Of"] = Now(stop => ExposureResponse.Of(Trials, cancellation: stop)),
            ["ColumnSurvival.Of"] = Now(stop => ColumnSurvival.Of(Trials, null, stop)),
            ["PrintThroughResponse.Of"] = Now(stop => PrintThroughResponse.Of(Trials, cancellation: stop)),
            ["StateEnd.Of"] = Now(stop => StateEnd.Of([.. Trials, .. Trials], cancellation: stop)),
            ["LearntEffects.Of"] = Now(stop =>
                LearntEffects.Of(
                    TrendLog.Of(
                        Trials.Select((t, i) => new LogEntry(i + 1, t with { Date = new DateOnly(2026, 11, 2) }, false))
                    ),
                    stop
                )
            ),
            ["StartAdvice.OfNeighbour"] = Now(stop => StartAdvice.OfNeighbour(Trials, 0.05, null, stop)),
            ["MeshFile.Write"] = Now(stop => MeshFile.Write(new MemoryStream(), "a.obj", Objects, null, stop)),
            ["MeshFile.WriteAsync"] = stop => MeshFile.WriteAsync(new MemoryStream(), "a.3mf", Objects, null, stop),
            ["MeshFile.ReadAsync"] = stop => MeshFile.ReadAsync(Bytes("a"), "a", cancellation: stop),
            ["StlWriter.WriteAsync"] = stop => StlWriter.WriteAsync(new MemoryStream(), Mesh, "a", stop),
            ["ObjWriter.WriteAsync"] = stop => ObjWriter.WriteAsync(new MemoryStream(), Objects, stop),
            ["ThreeMfWriter.WriteAsync"] = stop =>
                ThreeMfWriter.WriteAsync(new MemoryStream(), Objects, new ThreeMfContent(), stop),
            ["SpecJson.ReadAsync"] = stop => SpecJson.ReadAsync(Bytes("{}"), cancellation: stop),
            ["ObjectFileJson.ReadAsync"] = stop => ObjectFileJson.ReadAsync(Bytes("{}"), "a", stop),
            ["ObjectFileJson.WriteAsync"] = stop =>
                ObjectFileJson.WriteAsync(new MemoryStream(), new ObjectFile("witness", Presets.Witness), stop),
            ["FeatureTableCsv.ReadAsync"] = stop => FeatureTableCsv.ReadAsync(Bytes("a"), stop),
            ["FeatureTableCsv.WriteAsync"] = stop =>
                FeatureTableCsv.WriteAsync(new MemoryStream(), Made.Features, stop),
            ["FeatureTableJson.ReadAsync"] = stop => FeatureTableJson.ReadAsync(Bytes("a"), stop),
            ["FeatureTableJson.WriteAsync"] = stop =>
                FeatureTableJson.WriteAsync(new MemoryStream(), Made.Features, stop),
            ["ReadingsFile.ReadAsync"] = stop => ReadingsFile.ReadAsync(Bytes("a"), "a", stop),
            ["AsyncStreams.ReadAsync"] = stop => AsyncStreams.ReadAsync(Bytes("a"), 9, s => s.Length, stop),
            ["AsyncStreams.WriteAsync"] = stop => AsyncStreams.WriteAsync(new MemoryStream(), _ => { }, stop),
            ["TemporaryCopy.OfAsync"] = stop => TemporaryCopy.OfAsync(Bytes("a"), "a", cancellation: stop),
            ["SpecJson.WriteAsync"] = stop => SpecJson.WriteAsync(new MemoryStream(), Presets.Witness, stop),
            ["TrialLog.ReadAsync"] = stop => TrialLog.ReadAsync(Bytes(TrialLog.ToLine(Trials[0])), "log", stop),
            ["TrialLog.AppendAsync"] = stop => TrialLog.AppendAsync("not-made.jsonl", _ => Trials[0], stop),
            ["AppendedFile.AppendAsync"] = stop => AppendedFile.AppendAsync("not-made.jsonl", _ => "a\n", stop),
            ["StoppingStream"] = Now(stop => new StoppingStream(new MemoryStream(), stop).WriteByte(1)),
        };

    private static Func<CancellationToken, Task> Now(Action<CancellationToken> work) =>
        stop =>
        {
            work(stop);
            return Task.CompletedTask;
        };

    private static MemoryStream Bytes(string text) => new(System.Text.Encoding.UTF8.GetBytes(text));
}
