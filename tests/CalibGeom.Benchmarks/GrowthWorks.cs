using CalibGeom.Cli.Shared;
using CalibGeom.Formats;
using CalibGeom.Meshes;
using CalibGeom.Objects;
using CalibGeom.TestObjects.Specs;
using CalibGeom.Verification.Calipers;
using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Readings;
using static CalibGeom.Benchmarks.GrowthInputs;

namespace CalibGeom.Benchmarks;

/// <summary>What <see cref="GrowthTable"/> follows: every reader, and the commands that a large input may reach.</summary>
internal static class GrowthWorks
{
    internal static IReadOnlyList<GrowthWork> All { get; } = [.. Readers, .. Commands];

    private static IEnumerable<GrowthWork> Readers =>
        [
            new("read binary STL", "triangles", 100_000, (f, n) => Mesh(f, "a.stl", n)),
            new("read ASCII STL", "triangles", 20_000, (f, n) => Text(f, "a.stl", Ascii(n), ReadMesh)),
            new("read OBJ", "triangles", 50_000, (f, n) => Mesh(f, "a.obj", n)),
            new(
                "read OBJ",
                "objects over all vertices",
                1_000,
                (f, n) => Text(f, "b.obj", ObjectsOverAll(n), ReadMesh)
            ),
            new("read 3MF", "triangles", 50_000, (f, n) => Mesh(f, "a.3mf", n)),
            new("read a spec", "lines of remarks", 1_500, (f, n) => Text(f, "a", Spec(n), With(s => SpecJson.Read(s)))),
            new(
                "read an object file",
                "times forty empty lines",
                1_500,
                (f, n) => Text(f, "a", ObjectFile(n), With(s => ObjectFileJson.Read(s, "a")))
            ),
            new("read a feature table", "rows", 5_000, (f, n) => Text(f, "a", FeatureRows(n, 0), ReadTable)),
            new(
                "read a feature table",
                "lines of remarks",
                20_000,
                (f, n) => Text(f, "a", FeatureRows(9, n), ReadTable)
            ),
            new("read readings", "rows", 5_000, (f, n) => Text(f, "r.csv", Readings(n / 2), ReadReadings)),
            new("read readings in JSON", "values", 5_000, (f, n) => Text(f, "r.json", JsonReadings(n), ReadReadings)),
            new("read a log", "prints", 1_000, (f, n) => Text(f, "a", Log(n), With(s => TrialLog.Read(s)))),
            new("read a caliper record", "rows", 2_000, (f, n) => Text(f, "a", Caliper(n), ReadCaliper)),
        ];

    private static IEnumerable<GrowthWork> Commands =>
        [
            Command("triangles", 50_000, "a.stl", MillionTriangles.Torus, "inspect a.stl --layer 0.5 --pixel 0.2"),
            Command("triangles about two tips", 4_000, "a.stl", DoubleCone, "inspect a.stl --layer 0.2 --pixel 0.1"),
            Command("equal triangles", 2_000, "a.stl", Equal, "inspect a.stl"),
            Command("layers", 100, "a.stl", Tower, "inspect a.stl --layer 0.05 --pixel 0.04"),
            Command("triangles", 10_000, "a.stl", MillionTriangles.Torus, "place a.stl --plate 300x300 -o o.stl"),
            Command("equal triangles", 2_000, "a.stl", Equal, "place a.stl --plate 150x90 -o o.stl"),
            Command("readings", 10_000, "r.csv", n => Readings(n / 2), "predict r.csv"),
            Command(
                "readings by an instrument that nobody described",
                10_000,
                "r.csv",
                n =>
                    Readings(n / 2)
                        .Replace("# instrument cal resolution=0.01 mpe=0.02\n", "", StringComparison.Ordinal),
                "predict r.csv"
            ),
            Command("instruments", 100, "r.csv", Instruments, "predict r.csv"),
            Command("coupons", 30, "r.csv", Coupons, "predict r.csv"),
            Command("prints", 30, "l.jsonl", Log, "tune l.jsonl"),
            Command("prints", 100, "l.jsonl", Log, "trend l.jsonl"),
            Command("coupons", 30, "l.jsonl", Plate, "map l.jsonl --plate 150x90"),
            Command("prints", 300, "l.jsonl", Log, "log show l.jsonl"),
        ];

    private static Action Mesh(string folder, string name, int triangles)
    {
        string path = Path.Combine(folder, name);
        Write(path, MillionTriangles.Torus(triangles));
        return () => ReadMesh(path);
    }

    private static Action Text(string folder, string name, string text, Action<string> read)
    {
        string path = Path.Combine(folder, name);
        System.IO.File.WriteAllText(path, text);
        return () => read(path);
    }

    private static GrowthWork Command(string counted, int least, string file, Func<int, string> input, string line) =>
        new(Name(line), counted, least, (folder, n) => Text(folder, file, input(n), _ => Run(folder, line)));

    private static GrowthWork Command(
        string counted,
        int least,
        string file,
        Func<int, TriangleMesh> mesh,
        string line
    ) =>
        new(
            Name(line),
            counted,
            least,
            (folder, n) =>
            {
                Write(Path.Combine(folder, file), mesh(n));
                return () => Run(folder, line);
            }
        );

    private static string Name(string line) => $"`{line}`";

    /// <summary>A whole command line, its files in a folder; whatever it answers, it must not refuse.</summary>
    private static void Run(string folder, string line)
    {
        Environment.CurrentDirectory = folder;
        using var error = new StringWriter();
        var io = new CommandIo
        {
            Out = TextWriter.Null,
            Error = error,
            OpenInput = () => Stream.Null,
            OpenOutput = () => Stream.Null,
        };
        if (CommandHost.Run(line.Split(' '), io) is not (ExitCode.Done or ExitCode.Finding))
            throw new InvalidOperationException($"{line}: {error}");
    }

    private static void Write(string path, TriangleMesh mesh)
    {
        using FileStream stream = File.Create(path);
        MeshFile.Write(stream, path, [new MeshObject("growth", mesh)]);
    }

    private static TriangleMesh Tower(int layers)
    {
        double top = 0.05 * layers;
        return new TriangleMesh(
            [0, 0, 0, 20, 0, 0, 20, 20, 0, 0, 20, 0, 0, 0, top, 20, 0, top, 20, 20, top, 0, 20, top],
            [0, 2, 1, 0, 3, 2, 4, 5, 6, 4, 6, 7, 0, 1, 5, 0, 5, 4, 1, 2, 6, 1, 6, 5, 2, 3, 7, 2, 7, 6, 3, 0, 4, 3, 4, 7]
        );
    }

    private static void ReadMesh(string path) => MeshFile.Read(path).ToMesh();

    private static void ReadTable(string path) => FeatureTableCsv.Parse(File.ReadAllText(path));

    private static void ReadReadings(string path) => ReadingsFile.Read(path);

    private static void ReadCaliper(string path) => CaliperRecordFile.Read(path);

    private static Action<string> With<T>(Func<Stream, T> read) =>
        path =>
        {
            using FileStream stream = File.OpenRead(path);
            read(stream);
        };
}
