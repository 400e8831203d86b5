using CalibGeom.Verification.Readings;

namespace CalibGeom.Cli.Shared;

/// <summary>Readings that a command line names.</summary>
internal static class ReadingFiles
{
    /// <summary>The readings of one or more files, together.</summary>
    /// <exception cref="InputException">A file is missing or cannot be used, or files disagree.</exception>
    internal static ReadingSet Load(CommandIo io, IReadOnlyList<string> paths) =>
        ReadingSet.Merge(paths.Select(p => Load(io, p)).ToArray());

    /// <summary>The readings of one coupon; all when no coupon is named.</summary>
    /// <exception cref="InputException">There are none of this coupon.</exception>
    internal static ReadingSet Of(ReadingSet readings, string? coupon)
    {
        if (coupon is null)
            return readings;
        return readings.Coupons.Contains(coupon)
            ? readings.ForCoupon(coupon)
            : throw new InputException(
                $"There are no readings of coupon {coupon}. The readings hold "
                    + string.Join(", ", readings.Coupons.Select(c => c.Length > 0 ? c : "readings without a coupon"))
                    + "."
            );
    }

    private static ReadingSet Load(CommandIo io, string path)
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
}
