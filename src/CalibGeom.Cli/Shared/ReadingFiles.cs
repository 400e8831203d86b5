using CalibGeom.Features.Files;
using CalibGeom.Verification.Calipers;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Cli.Shared;

/// <summary>
/// Readings that a command line names, with the gauges of the caliper records that they name; the one door for every
/// command that reads some.
/// </summary>
internal sealed class ReadingFiles
{
    private readonly CommandIo io;
    private readonly IReadOnlyList<string> paths;
    private readonly ReadingSet[] files;
    private readonly List<Finding> findings = [];

    /// <exception cref="InputException">A file is missing, cannot be used or is named twice.</exception>
    internal ReadingFiles(CommandIo io, IReadOnlyList<string> paths)
    {
        (this.io, this.paths) = (io, paths);
        RequireOnce(paths);
        files = [.. paths.Select(p => Read(io, p))];
    }

    /// <summary>What is odd about the caliper records that were used so far: one that is old.</summary>
    internal IReadOnlyList<Finding> Findings => findings;

    /// <summary>The readings of each file, which is a print of its own.</summary>
    /// <exception cref="InputException">A caliper record cannot be used.</exception>
    internal IReadOnlyList<ReadingSet> Each() =>
        [.. files.Select((set, i) => CaliperRecords.Attach(set, name => Record(name, RecordPath(paths[i], name))))];

    /// <summary>The readings of all files as those of one print; the gauges of a record count once.</summary>
    /// <exception cref="InputException">A caliper record cannot be used, or files disagree.</exception>
    internal ReadingSet Together() =>
        CaliperRecords.Attach(ReadingSet.Join(files), name => Record(name, OnlyPath(name)));

    /// <summary>The readings of one coupon; all when no coupon is named.</summary>
    /// <exception cref="InputException">There are none of this coupon.</exception>
    internal static ReadingSet Of(ReadingSet readings, string? coupon)
    {
        if (coupon is null)
            return readings;
        RequireCoupon(readings.Coupons, coupon);
        return readings.ForCoupon(coupon);
    }

    /// <exception cref="InputException">The wanted one is not among them.</exception>
    internal static void RequireCoupon(IReadOnlyList<string> coupons, string wanted)
    {
        if (!coupons.Contains(wanted))
            throw new InputException(
                InputIds.Option,
                $"There are no readings of coupon {wanted}. The readings hold "
                    + string.Join(", ", coupons.Select(c => c.Length > 0 ? c : "readings without a coupon"))
                    + "."
            );
    }

    private static void RequireOnce(IReadOnlyList<string> paths)
    {
        string? twice = paths
            .GroupBy(p => p == "-" ? p : RealPath.Of(p), StringComparer.Ordinal)
            .FirstOrDefault(g => g.Count() > 1)
            ?.First();
        if (twice is not null)
            throw new InputException(
                InputIds.Option,
                $"{twice} is named twice. Readings count once; name each file once."
            );
    }

    private static ReadingSet Read(CommandIo io, string path)
    {
        if (path == "-")
        {
            using Stream input = io.OpenInput();
            return ReadingsFile.Read(input, "standard input");
        }
        WrongFile.Require(path, InputKind.Readings);
        using FileStream stream = File.OpenRead(path);
        return ReadingsFile.Read(stream, path);
    }

    private CaliperRecord Record(string name, string path)
    {
        CaliperRecord record = CaliperRecordFile.Read(path);
        if (CaliperRecords.Age(name, record, io.Today) is { } old && !findings.Contains(old))
            findings.Add(old);
        return record;
    }

    /// <summary>A record is looked for beside the readings that name it.</summary>
    private static string RecordPath(string readings, string name) =>
        Path.Combine(readings == "-" ? "." : Path.GetDirectoryName(Path.GetFullPath(readings))!, name);

    private string OnlyPath(string name)
    {
        string[] found =
        [
            .. paths
                .Where((_, i) => files[i].Instruments.Any(n => n.RecordFile == name))
                .Select(p => RecordPath(p, name))
                .DistinctBy(RealPath.Of, StringComparer.Ordinal),
        ];
        return found.Length == 1
            ? found[0]
            : throw new InputException(
                InputIds.Option,
                $"The files lie in different folders, and each names a caliper record {name} beside it. Readings of one "
                    + "print need one record; put them beside it."
            );
    }
}
