using System.Globalization;
using System.Text;

namespace CalibGeom.Verification.Uncertainty;

/// <summary>A result with its combined standard uncertainty and what it is made of. Immutable.</summary>
/// <param name="Value">The result.</param>
/// <param name="StandardUncertainty">Combined standard uncertainty (JCGM 100, 5.1 and 5.2).</param>
/// <param name="DegreesOfFreedom">Effective degrees of freedom.</param>
/// <param name="Components">The lines of the budget.</param>
public sealed record UncertaintyBudget(
    double Value,
    double StandardUncertainty,
    double DegreesOfFreedom,
    IReadOnlyList<BudgetComponent> Components
)
{
    /// <summary>The coverage factor.</summary>
    /// <param name="probability">Level of confidence, between 0 and 1.</param>
    public double CoverageFactor(double probability = Coverage.Level) =>
        Coverage.StudentFactor(DegreesOfFreedom, probability);

    /// <summary>The expanded uncertainty U = k u.</summary>
    /// <param name="probability">Level of confidence, between 0 and 1.</param>
    public double Expanded(double probability = Coverage.Level) => CoverageFactor(probability) * StandardUncertainty;

    /// <summary>The coverage interval.</summary>
    /// <param name="probability">Level of confidence, between 0 and 1.</param>
    public Interval Interval(double probability = Coverage.Level)
    {
        double expanded = Expanded(probability);
        return new Interval(Value - expanded, Value + expanded);
    }

    /// <summary>The budget as a table of text, one component a line, largest share first.</summary>
    public string ToText()
    {
        int width = Math.Max(9, Components.Select(c => c.Name.Length).DefaultIfEmpty(0).Max());
        var text = new StringBuilder();
        text.Append(
            CultureInfo.InvariantCulture,
            $"{"component".PadRight(width)}  {"value", 10}  {"u", 10}  type  {"distribution", -20}  "
                + $"{"sensitivity", 11}  share\n"
        );
        foreach (
            BudgetComponent c in Components
                .OrderByDescending(c => Math.Abs(c.Share))
                .ThenBy(c => c.Name, StringComparer.Ordinal)
        )
            text.Append(
                CultureInfo.InvariantCulture,
                $"{c.Name.PadRight(width)}  {Number(c.Value), 10}  {Number(c.StandardUncertainty), 10}  "
                    + $"{c.Evaluation, -4}  {Word(c.Shape), -20}  {Number(c.Sensitivity), 11}  {c.Share * 100, 4:F0}%\n"
            );
        return text.ToString();
    }

    /// <summary>The name of a distribution in words.</summary>
    /// <param name="shape">The distribution.</param>
    public static string Word(InputShape shape) =>
        shape switch
        {
            InputShape.Student => "Student t",
            InputShape.CurvilinearTrapezoid => "curvilinear trapezoid",
            _ => shape.ToString().ToLowerInvariant(),
        };

    private static string Number(double value) => value.ToString("G4", CultureInfo.InvariantCulture);
}
