using System.Globalization;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Clearances;

/// <summary>
/// Standard tolerances and fits of ISO 286-1:2010. Values are those of the tables, which count; the formulas behind
/// them differ by up to 13 %. Tolerances for nominal sizes up to 120 mm, fits up to 50 mm. All lengths are in mm.
/// </summary>
public static class Iso286
{
    /// <summary>The coarsest grade in the table.</summary>
    public const int CoarsestGrade = 16;

    /// <summary>The tables are in micrometres, as they are printed.</summary>
    private const double Micrometres = 1000;

    private static readonly double[] Steps = [3, 6, 10, 18, 30, 50, 80, 120];
    private static readonly double[] FineSteps = [3, 6, 10, 14, 18, 24, 30, 40, 50];

    /// <summary>IT1 to IT16 in micrometres; the four finest grades above 50 mm are not used here.</summary>
    private static readonly double[][] Tolerances =
    [
        [0.8, 1.2, 2, 3, 4, 6, 10, 14, 25, 40, 60, 100, 140, 250, 400, 600],
        [1, 1.5, 2.5, 4, 5, 8, 12, 18, 30, 48, 75, 120, 180, 300, 480, 750],
        [1, 1.5, 2.5, 4, 6, 9, 15, 22, 36, 58, 90, 150, 220, 360, 580, 900],
        [1.2, 2, 3, 5, 8, 11, 18, 27, 43, 70, 110, 180, 270, 430, 700, 1100],
        [1.5, 2.5, 4, 6, 9, 13, 21, 33, 52, 84, 130, 210, 330, 520, 840, 1300],
        [1.5, 2.5, 4, 7, 11, 16, 25, 39, 62, 100, 160, 250, 390, 620, 1000, 1600],
        [double.NaN, double.NaN, double.NaN, double.NaN, 13, 19, 30, 46, 74, 120, 190, 300, 460, 740, 1200, 1900],
        [double.NaN, double.NaN, double.NaN, double.NaN, 15, 22, 35, 54, 87, 140, 220, 350, 540, 870, 1400, 2200],
    ];

    /// <summary>Upper deviations of shafts c to h and lower ones of k to s, micrometres.</summary>
    private static readonly Dictionary<char, double[]> Shafts = new()
    {
        ['c'] = [-60, -70, -80, -95, -95, -110, -110, -120, -130],
        ['d'] = [-20, -30, -40, -50, -50, -65, -65, -80, -80],
        ['e'] = [-14, -20, -25, -32, -32, -40, -40, -50, -50],
        ['f'] = [-6, -10, -13, -16, -16, -20, -20, -25, -25],
        ['g'] = [-2, -4, -5, -6, -6, -7, -7, -9, -9],
        ['h'] = [0, 0, 0, 0, 0, 0, 0, 0, 0],
        ['k'] = [0, 1, 1, 1, 1, 2, 2, 2, 2],
        ['n'] = [4, 8, 10, 12, 12, 15, 15, 17, 17],
        ['p'] = [6, 12, 15, 18, 18, 22, 22, 26, 26],
        ['s'] = [14, 19, 23, 28, 28, 35, 35, 43, 43],
    };

    /// <summary>Eleven preferred hole-basis fits, from loose to tight.</summary>
    public static IReadOnlyList<IsoFit> Fits { get; } =
    [
        new("H11/c11", 11, 'c', 11),
        new("H9/d9", 9, 'd', 9),
        new("H9/e8", 9, 'e', 8),
        new("H8/f7", 8, 'f', 7),
        new("H7/g6", 7, 'g', 6),
        new("H7/h6", 7, 'h', 6),
        new("H8/h7", 8, 'h', 7),
        new("H7/k6", 7, 'k', 6),
        new("H7/n6", 7, 'n', 6),
        new("H7/p6", 7, 'p', 6),
        new("H7/s6", 7, 's', 6),
    ];

    /// <summary>The standard tolerance of a grade.</summary>
    /// <param name="grade">1 to 16; 5 to 16 above 50 mm.</param>
    /// <param name="nominal">Nominal size, over 0 and at most 120 mm.</param>
    /// <returns>The tolerance, mm.</returns>
    /// <exception cref="ArgumentException">A value is out of range.</exception>
    public static double Tolerance(int grade, double nominal)
    {
        if (grade is < 1 or > CoarsestGrade)
            throw new ArgumentException($"grade is {grade}; it runs from 1 to {CoarsestGrade}.", nameof(grade));
        double value = Tolerances[Step(Steps, nominal)][grade - 1];
        return double.IsNaN(value)
            ? throw new ArgumentException("grade is 1 to 4, which are tabled to 50 mm here.", nameof(grade))
            : value / Micrometres;
    }

    /// <summary>The smallest grade whose tolerance holds a deviation: |deviation| at most half the tolerance.</summary>
    /// <param name="nominal">Nominal size, mm.</param>
    /// <param name="deviation">Measured less nominal, mm.</param>
    /// <returns>The grade from 1 (5 above 50 mm) to 16; null when the deviation is larger or the size not
    /// tabled.</returns>
    public static int? GradeOf(double nominal, double deviation)
    {
        if (!(nominal > 0 && nominal <= Steps[^1]) || !double.IsFinite(deviation))
            return null;
        double[] row = Tolerances[Step(Steps, nominal)];
        for (int grade = 1; grade <= CoarsestGrade; grade++)
            if (Math.Abs(deviation) <= row[grade - 1] / Micrometres / 2 + 1e-12)
                return grade;
        return null;
    }

    /// <summary>Upper and lower deviation of a shaft.</summary>
    /// <param name="letter">One of c d e f g h k n p s.</param>
    /// <param name="grade">The grade of its tolerance.</param>
    /// <param name="nominal">Nominal size, over 0 and at most 50 mm.</param>
    /// <returns>Deviations, mm.</returns>
    /// <exception cref="ArgumentException">A value is out of range.</exception>
    public static Interval Shaft(char letter, int grade, double nominal)
    {
        if (!Shafts.TryGetValue(letter, out double[]? row))
            throw new ArgumentException(
                $"letter is {letter}; shafts are {string.Join(' ', Shafts.Keys)}.",
                nameof(letter)
            );
        double fundamental = row[Step(FineSteps, nominal)] / Micrometres,
            tolerance = Tolerance(grade, nominal);
        if (letter == 'k' && grade is (< 4 or > 7))
            fundamental = 0;
        return letter <= 'h'
            ? new Interval(fundamental - tolerance, fundamental)
            : new Interval(fundamental, fundamental + tolerance);
    }

    private static int Step(double[] steps, double nominal)
    {
        if (!(nominal > 0 && nominal <= steps[^1]))
            throw new ArgumentException(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"nominal is {nominal}; it is over 0 and at most {steps[^1]} mm."
                ),
                nameof(nominal)
            );
        return Array.FindIndex(steps, s => nominal <= s);
    }
}
