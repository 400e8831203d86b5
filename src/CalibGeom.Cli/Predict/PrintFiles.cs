using CalibGeom.Cli.Shared;
using CalibGeom.Features.Files;
using CalibGeom.Verification.Calipers;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Cli.Predict;

/// <summary>Readings files as prints: each file is one, unless they are parts of one.</summary>
internal static class PrintFiles
{
    /// <summary>Readings with the gauges of the caliper records they name; records that are old are said.</summary>
    /// <exception cref="InputException">A file is missing, cannot be used or is named twice.</exception>
    internal static IReadOnlyList<ReadingSet> Load(
        CommandIo io,
        IReadOnlyList<string> paths,
        bool onePrint,
        List<Finding> old
    )
    {
        string? twice = paths
            .GroupBy(p => p == "-" ? p : RealPath.Of(p), StringComparer.Ordinal)
            .FirstOrDefault(g => g.Count() > 1)
            ?.First();
        if (twice is not null)
            throw new InputException($"{twice} is named twice. Readings count once; name each file once.");
        ReadingSet[] files = paths.Select(p => WithRecords(ReadingFiles.Load(io, [p]), p, old)).ToArray();
        return onePrint ? [ReadingSet.Merge(files)] : files;
    }

    /// <summary>Records are looked for beside the readings that name them.</summary>
    private static ReadingSet WithRecords(ReadingSet set, string path, List<Finding> old) =>
        CaliperRecords.Attach(
            set,
            file =>
            {
                string beside = path == "-" ? "." : Path.GetDirectoryName(Path.GetFullPath(path))!;
                CaliperRecord record = CaliperRecordFile.Load(Path.Combine(beside, file));
                if (
                    CaliperRecords.Age(file, record, DateOnly.FromDateTime(DateTime.Now)) is { } finding
                    && !old.Contains(finding)
                )
                    old.Add(finding);
                return record;
            }
        );

    /// <summary>The coupons to answer, in turn.</summary>
    /// <exception cref="InputException">The wanted one has no readings.</exception>
    internal static IReadOnlyList<string> Coupons(IReadOnlyList<ReadingSet> prints, string? wanted)
    {
        string[] all = prints.SelectMany(p => p.Coupons).Distinct().Order(StringComparer.Ordinal).ToArray();
        if (wanted is null)
            return all.Length > 0 ? all : [""];
        return all.Contains(wanted)
            ? [wanted]
            : throw new InputException(
                $"There are no readings of coupon {wanted}. The readings hold "
                    + string.Join(", ", all.Select(c => c.Length > 0 ? c : "readings without a coupon"))
                    + "."
            );
    }

    /// <summary>The prints that have readings of a coupon; all of them when there is but one.</summary>
    internal static IReadOnlyList<ReadingSet> Of(IReadOnlyList<ReadingSet> prints, string coupon) =>
        prints.Count == 1
            ? [prints[0].ForCoupon(coupon)]
            : prints.Where(p => p.Coupons.Contains(coupon)).Select(p => p.ForCoupon(coupon)).ToArray();
}
