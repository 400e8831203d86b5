using System.Globalization;

namespace CalibGeom.Verification.Clearances;

/// <summary>How much prints differ enters every answer about the next one; where it comes from is said.</summary>
internal static class NextPrintFindings
{
    /// <summary>With so many prints the spread is learnt rather than assumed.</summary>
    private const int Enough = 5;

    internal static IEnumerable<Finding> Of(PrintVariation v)
    {
        if (v.IsSet || v.Prints >= Enough)
            yield break;
        string read =
            v.Prints == 1 ? "One print says" : string.Create(CultureInfo.InvariantCulture, $"{v.Prints} prints say");
        yield return new Finding(
            "next-print-assumed",
            Severity.Warning,
            "",
            string.Create(
                CultureInfo.InvariantCulture,
                $"{read} {(v.Prints == 1 ? "nothing" : "little")} of how much the next differs: growth is taken to vary by "
                    + $"{v.StandardDeviation:0.0000} mm from print to print."
            ),
            "Read further prints and give each file, or set the standard deviation between prints when you know it."
        )
        {
            Value = v.StandardDeviation,
            Unit = "mm",
        };
    }
}
