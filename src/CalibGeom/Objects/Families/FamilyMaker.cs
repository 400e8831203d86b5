using System.Runtime.ExceptionServices;
using CalibGeom.Features.Files;
using CalibGeom.Meshes;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Objects.Families;

/// <summary>
/// Makes a family, or one part of it, on all cores. Each object is built, written and forgotten, so that memory does
/// not grow with their number, and what an earlier run has made is passed over: the same digest, the same geometry, and
/// its file still there.
/// </summary>
public static class FamilyMaker
{
    /// <summary>The part of a pattern that stands for an object's number.</summary>
    public const string NumberMark = "{n}";

    /// <summary>Makes the objects and the index beside them.</summary>
    /// <param name="family">The family.</param>
    /// <param name="shard">Which part of it.</param>
    /// <param name="pattern">The path of a mesh with <c>{n}</c> for the number; its folder is made when it is
    /// missing.</param>
    /// <param name="write">Writes the files of one object: its name, itself, its mesh, the path of the mesh. Called on
    /// several threads.</param>
    /// <param name="outputs">Gives a set of outputs with the rule that holds for the index and the journal beside it;
    /// null for one that may write over any file.</param>
    /// <param name="progress">Told the finished part, 0 to 1.</param>
    /// <param name="cancellation">Stops the work between objects; what is made stays and is known to the next
    /// run.</param>
    /// <returns>What was made and where the index is.</returns>
    /// <exception cref="InputException">The pattern's file name lacks <c>{n}</c>, index or journal may not be written
    /// over, or the journal is none.</exception>
    /// <exception cref="IOException">Writing failed.</exception>
    /// <exception cref="UnauthorizedAccessException">A file may not be written.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static FamilyResult Run(
        ObjectFamily family,
        FamilyShard shard,
        string pattern,
        Action<string, TestObject, TriangleMesh, string> write,
        Func<OutputSet>? outputs = null,
        IProgress<double>? progress = null,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(family);
        ArgumentNullException.ThrowIfNull(shard);
        ArgumentNullException.ThrowIfNull(pattern);
        ArgumentNullException.ThrowIfNull(write);
        string index = IndexOf(pattern, shard);
        (string csv, string json, string past) = (index + ".csv", index + ".json", index + ".journal.jsonl");
        using OutputSet files = outputs?.Invoke() ?? new OutputSet();
        foreach (string path in new[] { csv, json, past })
            files.RequireFree(path);
        int[] numbers = [.. shard.Numbers(family.Count)];
        var rows = new FamilyRow[numbers.Length];
        int done = 0,
            known = 0;
        var telling = new Lock();
        using (var journal = new FamilyJournal(past))
            Each(
                numbers.Length,
                i =>
                {
                    string path = pattern.Replace(NumberMark, family.Label(numbers[i]), StringComparison.Ordinal);
                    FamilyRow row = Make(family, numbers[i], path, journal.Known, write, cancellation, out bool stood);
                    if (!stood)
                        journal.Add(row);
                    rows[i] = row;
                    lock (telling)
                    {
                        known += stood && row.Errors == 0 ? 1 : 0;
                        progress?.Report((double)++done / numbers.Length);
                    }
                },
                cancellation
            );
        files.Add(csv, stream => FamilyIndex.WriteCsv(stream, family, rows));
        files.Add(json, stream => FamilyIndex.WriteJson(stream, family, rows));
        files.Commit();
        return new FamilyResult(rows, known, [csv, json]);
    }

    /// <summary>The path of the index without its ending, in a folder that exists.</summary>
    private static string IndexOf(string pattern, FamilyShard shard)
    {
        if (!Path.GetFileName(pattern).Contains(NumberMark, StringComparison.Ordinal))
            throw new InputException(
                InputIds.Family,
                $"{pattern}: the file name of a family needs {NumberMark}, which stands for the number."
            );
        string folder = Path.GetDirectoryName(pattern) is { Length: > 0 } named ? named : ".";
        Directory.CreateDirectory(folder);
        return Path.Combine(folder, shard.Of == 1 ? "index" : $"index.{shard.Part}-of-{shard.Of}");
    }

    /// <summary>On all cores; the first thing that goes wrong comes out as it is.</summary>
    private static void Each(int count, Action<int> work, CancellationToken cancellation)
    {
        var options = new ParallelOptions
        {
            MaxDegreeOfParallelism = Environment.ProcessorCount,
            CancellationToken = cancellation,
        };
        try
        {
            Parallel.For(
                0,
                count,
                options,
                i =>
                {
                    // The loop hears of it a little later: another thread may still be telling everybody.
                    cancellation.ThrowIfCancellationRequested();
                    work(i);
                }
            );
        }
        catch (AggregateException e)
        {
            ExceptionDispatchInfo.Throw(e.InnerExceptions[0]);
        }
    }

    private static FamilyRow Make(
        ObjectFamily family,
        int number,
        string path,
        IReadOnlyDictionary<int, FamilyRow> known,
        Action<string, TestObject, TriangleMesh, string> write,
        CancellationToken cancellation,
        out bool stood
    )
    {
        known.TryGetValue(number, out FamilyRow? row);
        FamilyMember member;
        try
        {
            member = family.Member(number);
        }
        catch (InputException e)
        {
            FamilyRow refused = Refused(family, number, e);
            stood = row is not null && row.Digest == refused.Digest && row.Finding == refused.Finding;
            return refused;
        }
        string digest = SpecDigest.Of(member.Spec);
        stood =
            row is not null
            && row.Digest == digest
            && row.GeometryVersion == ObjectHeader.GeometryVersion
            && (row.Errors > 0 || (row.File == Path.GetFileName(path) && IsThere(path, row.Bytes)));
        if (stood)
            return row! with { Number = number, Values = member.Values };
        TestObject made = TestObject.Of(member.Spec, cancellation: cancellation);
        IReadOnlyList<Finding> findings = made.CheckAsPrinted(cancellation: cancellation);
        int errors = findings.Count(f => f.Severity == Severity.Error);
        row = new FamilyRow
        {
            Number = number,
            Values = member.Values,
            Digest = digest,
            GeometryVersion = ObjectHeader.GeometryVersion,
            File = errors > 0 ? "" : Path.GetFileName(path),
            Errors = errors,
            Warnings = findings.Count(f => f.Severity == Severity.Warning),
            Finding = findings.FirstOrDefault(f => f.Severity > Severity.Note)?.Message ?? "",
        };
        if (errors > 0)
            return row;
        TriangleMesh mesh = made.ToMesh(cancellation);
        write($"{family.Name}-{family.Label(number)}", made, mesh, path);
        return row with
        {
            Bytes = new FileInfo(path) is { Exists: true } file ? file.Length : 0,
            Triangles = mesh.TriangleCount,
            Volume = mesh.Volume,
        };
    }

    /// <summary>Whether a file is as long as the one that was written; another one is made again.</summary>
    private static bool IsThere(string path, long bytes) =>
        new FileInfo(path) is { Exists: true } file && file.Length == bytes;

    /// <summary>Values that are each allowed may still not go together.</summary>
    private static FamilyRow Refused(ObjectFamily family, int number, InputException e) =>
        new()
        {
            Number = number,
            Values = family.ValuesOf(number),
            Digest = "",
            GeometryVersion = ObjectHeader.GeometryVersion,
            File = "",
            Errors = 1,
            Warnings = 0,
            Finding = e.Message,
        };
}
