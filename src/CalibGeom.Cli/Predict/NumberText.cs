using System.Globalization;

namespace CalibGeom.Cli.Predict;

/// <summary>Numbers of the report.</summary>
internal static class NumberText
{
    internal static string Mm(double value) => Rounded(value, 3).ToString("0.000", CultureInfo.InvariantCulture);

    /// <summary>With its sign; zero has none.</summary>
    internal static string Signed(double value, int digits = 3)
    {
        double rounded = Rounded(value, digits);
        string zero = digits == 3 ? "0.000" : "0.0";
        return rounded.ToString($"+{zero};-{zero};{zero}", CultureInfo.InvariantCulture);
    }

    /// <summary>Whole percents; the ends are said only where they are reached exactly.</summary>
    internal static string Percent(double probability) =>
        probability switch
        {
            > 0 and < 0.005 => "<1 %",
            > 0.995 and < 1 => ">99 %",
            _ => (100 * probability).ToString("0", CultureInfo.InvariantCulture) + " %",
        };

    /// <summary>Without the minus of a zero.</summary>
    private static double Rounded(double value, int digits) => Math.Round(value, digits) + 0.0;
}
