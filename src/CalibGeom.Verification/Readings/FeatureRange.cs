using System.Globalization;
using System.Text.RegularExpressions;

namespace CalibGeom.Verification.Readings;

/// <summary>
/// Several features in one row of a sheet: <c>column1-6.stood</c>, <c>column18+17+3-5.stood</c>. The value is one word
/// for all of them, or a word for each in the order written.
/// </summary>
internal static partial class FeatureRange
{
    private const int Most = 200;

    /// <summary>The row as one row a feature; itself when it names one feature.</summary>
    /// <exception cref="InputException">The range cannot be read, or it has another number of values.</exception>
    internal static IReadOnlyList<ReadingRow> Expand(ReadingRow row)
    {
        if (Form().Match(row.Feature) is not { Success: true } match)
            return [row];
        int[] numbers = match.Groups["list"].Value.Split('+').SelectMany(Numbers).Take(Most + 1).ToArray();
        if (numbers.Length > Most)
            throw new InputException(
                InputIds.Readings,
                $"{row.Feature} stands for more than {Most} features. Use several rows."
            );
        string[] values = row.Value.Split((char[])[' ', '/', '\t'], StringSplitOptions.RemoveEmptyEntries);
        if (values.Length != 1 && values.Length != numbers.Length)
            throw new InputException(
                InputIds.Readings,
                $"{row.Feature} stands for {numbers.Length} features, but has {values.Length} values. Write one word for "
                    + "all of them, or one for each in this order."
            );
        return numbers
            .Select(
                (n, i) =>
                    row with
                    {
                        Feature =
                            $"{match.Groups["head"].Value}{n.ToString(CultureInfo.InvariantCulture)}{match.Groups["tail"].Value}",
                        Value = values[values.Length == 1 ? 0 : i],
                    }
            )
            .ToArray();
    }

    private static IEnumerable<int> Numbers(string text)
    {
        string[] ends = text.Split('-');
        int first = int.Parse(ends[0], CultureInfo.InvariantCulture),
            last = int.Parse(ends[^1], CultureInfo.InvariantCulture);
        int step = first <= last ? 1 : -1;
        for (int n = first; n != last + step; n += step)
            yield return n;
    }

    [GeneratedRegex(
        @"^(?<head>(?:[^/]*/)?[A-Za-z]+)(?<list>\d{1,6}(?:-\d{1,6})?(?:\+\d{1,6}(?:-\d{1,6})?)+|\d{1,6}-\d{1,6})(?<tail>\..+)$"
    )]
    private static partial Regex Form();
}
