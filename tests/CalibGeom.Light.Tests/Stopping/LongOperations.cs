using CalibGeom.Formats;
using CalibGeom.Formats.Stl;
using CalibGeom.Inspection;
using CalibGeom.Inspection.Layers;
using CalibGeom.Inspection.Topology;
using CalibGeom.Meshes;
using CalibGeom.Objects.Families;
using CalibGeom.Plates;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Comparison;
using CalibGeom.TestObjects.Specs;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Light.Tests.Stopping;

/// <summary>Everything that takes progress and cancellation, with something to chew on.</summary>
internal static class LongOperations
{
    private static readonly Lazy<TriangleMesh> Witness = new(() => TestObject.Of(Presets.Witness).ToMesh());

    /// <summary>By name; each is given how large its input is to be: 1 for a test, more for a measurement.</summary>
    internal static IReadOnlyDictionary<string, Func<int, Action<IProgress<double>, CancellationToken>>> All { get; } =
        new Dictionary<string, Func<int, Action<IProgress<double>, CancellationToken>>>
        {
            ["TestObject.Of"] = size => (progress, stop) => TestObject.Of(Grown(size), 0, progress, stop),
            ["TestObject.CheckAsPrinted"] = size =>
            {
                TestObjectSpec tilted = Grown(size) with { Tilt = new TiltSpec { Angle = 10 } };
                return (progress, stop) => TestObject.Of(tilted).CheckAsPrinted(progress, stop);
            },
            ["MeshFile.Read"] = size =>
            {
                using var stl = new MemoryStream();
                StlWriter.Write(stl, Ball(size), "ball");
                byte[] bytes = stl.ToArray();
                return (progress, stop) => MeshFile.Read(new MemoryStream(bytes), "ball", false, progress, stop);
            },
            ["MeshTopology.Run"] = size =>
            {
                TriangleMesh ball = Ball(size);
                return (progress, stop) => MeshTopology.Run(ball, progress, stop);
            },
            ["LayerInspection.Run"] = size =>
                (progress, stop) => LayerInspection.Run(Witness.Value, Layers(size), progress, stop),
            ["MeshInspection.Run"] = size =>
                (progress, stop) => MeshInspection.Run(Witness.Value, Layers(size), null, progress, stop),
            ["FileInspection.Run"] = size =>
            {
                using var stl = new MemoryStream();
                StlWriter.Write(stl, Witness.Value, "witness");
                stl.Position = 0;
                var file = MeshFile.Read(stl, "witness");
                return (progress, stop) => FileInspection.Run(file, "witness", Layers(size), null, progress, stop);
            },
            ["FamilyMaker.Run"] = Family,
            ["RasterPrint.LightOf"] = size =>
                (progress, stop) =>
                    RasterPrint.LightOf(
                        TestObject.Of(Presets.Witness),
                        size > 1 ? 0.01 : 0.4,
                        new GaussianBlur(0.02),
                        new LayerLight(new WorkingCurve(0.12, 4), irradiance: 4, time: 2.5, layer: 0.05),
                        progress: progress,
                        cancellation: stop
                    ),
            ["PlateLayout"] = size =>
            {
                TriangleMesh part = Ball(size);
                return (progress, stop) =>
                    new PlateLayout(new Plate(150, 90), [PlatePart.Of("ball", part)], null, progress, stop);
            },
            ["InputSet.MonteCarlo"] = size =>
            {
                var inputs = new InputSet([InputQuantity.Normal("x", 0, 1)]);
                var options = new MonteCarloOptions { Trials = 20_000 * size * size };
                return (progress, stop) => inputs.MonteCarlo(x => x[0], options, progress, stop);
            },
            ["Tuner.Run"] = WorkOfPrints.Advice,
            ["Tuner.History"] = WorkOfPrints.History,
            ["Trend.Run"] = WorkOfPrints.TrendOfAll,
            ["TrendAnswer.Of"] = WorkOfPrints.TrendOfLog,
            ["LightMap.Run"] = WorkOfPrints.Map,
            ["ClearancePrediction.Of"] = WorkOfPrints.Prediction,
        };

    /// <summary>A closed ball of about 10,000 triangles times the square of a size.</summary>
    internal static TriangleMesh Ball(int size)
    {
        int rings = 70 * size,
            around = rings;
        var points = new List<double> { 0, 0, 20 };
        for (int i = 1; i < rings; i++)
        for (int j = 0; j < around; j++)
        {
            (double sin, double cos) = Math.SinCos(Math.PI * i / rings);
            (double y, double x) = Math.SinCos(2 * Math.PI * j / around);
            points.AddRange([20 * sin * x, 20 * sin * y, 20 * cos]);
        }
        points.AddRange([0, 0, -20]);
        int last = points.Count / 3 - 1;
        var triangles = new List<int>();
        int At(int ring, int j) => 1 + (ring - 1) * around + j % around;
        for (int j = 0; j < around; j++)
        {
            triangles.AddRange([0, At(1, j), At(1, j + 1), last, At(rings - 1, j + 1), At(rings - 1, j)]);
            for (int i = 1; i < rings - 1; i++)
                triangles.AddRange([
                    At(i, j),
                    At(i + 1, j),
                    At(i + 1, j + 1),
                    At(i, j),
                    At(i + 1, j + 1),
                    At(i, j + 1),
                ]);
        }
        return new TriangleMesh([.. points], [.. triangles]);
    }

    /// <summary>The standard object for a measurement, with as many copies of each column as there may be.</summary>
    private static TestObjectSpec Grown(int size) =>
        size > 1 ? Presets.Standard with { Columns = Presets.Standard.Columns! with { Copies = 8 } } : Presets.Witness;

    private static LayerSettings Layers(int size) =>
        size > 1
            ? new()
            {
                PixelX = 0.01,
                PixelY = 0.01,
                LayerHeight = 0.02,
            }
            : new()
            {
                PixelX = 0.2,
                PixelY = 0.2,
                LayerHeight = 0.2,
            };

    private static Action<IProgress<double>, CancellationToken> Family(int size) =>
        (progress, stop) =>
        {
            using var folder = new TemporaryFolder();
            MakeFamily(size, folder.Root, progress, stop);
        };

    internal static void MakeFamily(int size, string folder, IProgress<double> progress, CancellationToken stop)
    {
        var sweep = new SweepAxis(
            "columns.height",
            // More than there are threads: what each has in hand when the stop comes may still be finished.
            [.. Enumerable.Range(0, (2 + Environment.ProcessorCount) * size).Select(i => $"{5 + 0.01 * i:0.00}")]
        );
        FamilyMaker.Run(
            new ObjectFamily("witness", Presets.Witness, [sweep]),
            FamilyShard.Parse("1/1"),
            Path.Combine(folder, "{n}.stl"),
            (name, made, mesh, path) =>
            {
                using FileStream stl = File.Create(path);
                StlWriter.Write(stl, mesh, ObjectHeader.Of(name, SpecDigest.Of(made.Spec)));
            },
            progress: progress,
            cancellation: stop
        );
    }
}
