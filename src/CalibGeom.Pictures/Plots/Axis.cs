using System.Globalization;

namespace CalibGeom.Pictures.Plots;

/// <summary>
/// One direction of a plot: its label, its range and where its ticks stand. Immutable and safe to share between
/// threads.
/// </summary>
public sealed class Axis
{
    /// <summary>An axis.</summary>
    /// <param name="label">What is plotted, with its unit: <c>rest time, s</c>.</param>
    /// <param name="min">The lower end.</param>
    /// <param name="max">The upper end, above <paramref name="min"/>.</param>
    /// <param name="logarithmic">Whether equal ratios take equal lengths; needs <paramref name="min"/> above 0.</param>
    /// <exception cref="ArgumentException">The range is empty, not finite, or not above 0 on a logarithmic
    /// axis.</exception>
    public Axis(string label, double min, double max, bool logarithmic = false)
    {
        ArgumentNullException.ThrowIfNull(label);
        if (!double.IsFinite(min) || !double.IsFinite(max) || min >= max || (logarithmic && min <= 0))
            throw new ArgumentException(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"An axis runs from a lower to a higher finite value, above 0 when logarithmic; {label} got "
                        + $"{min} to {max}."
                ),
                nameof(max)
            );
        (Label, Min, Max, Logarithmic) = (label, min, max, logarithmic);
    }

    /// <summary>What is plotted, with its unit.</summary>
    public string Label { get; }

    /// <summary>The lower end.</summary>
    public double Min { get; }

    /// <summary>The upper end.</summary>
    public double Max { get; }

    /// <summary>Whether equal ratios take equal lengths.</summary>
    public bool Logarithmic { get; }

    /// <summary>An axis with a little room beyond the values it must show.</summary>
    /// <param name="label">What is plotted, with its unit.</param>
    /// <param name="values">The values, at least one, all finite.</param>
    /// <exception cref="ArgumentException">There is no value, or one is not finite.</exception>
    public static Axis Around(string label, IEnumerable<double> values)
    {
        var all = values.ToArray();
        if (all.Length == 0)
            throw new ArgumentException($"An axis needs a value; {label} got none.", nameof(values));
        double min = all.Min(),
            max = all.Max();
        double room = max > min ? (max - min) * 0.08 : Math.Max(Math.Abs(max) * 0.1, 1e-3);
        return new Axis(label, min - room, max + room);
    }

    /// <summary>Where a value lies: 0 at the lower end, 1 at the upper, beyond them outside the range.</summary>
    /// <param name="value">A value; above 0 on a logarithmic axis.</param>
    public double Fraction(double value) =>
        Logarithmic ? Math.Log(value / Min) / Math.Log(Max / Min) : (value - Min) / (Max - Min);

    /// <summary>Tick values with their labels, rising; about as many as asked for, on round numbers.</summary>
    /// <param name="wanted">1 or more.</param>
    public IReadOnlyList<Tick> Ticks(int wanted = 6)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(wanted, 1);
        return Logarithmic && Max / Min >= 5
            ? LogarithmicTicks(wanted)
            : LinearTicks(Logarithmic ? 2 * wanted : wanted);
    }

    private List<Tick> LinearTicks(int wanted)
    {
        double raw = (Max - Min) / wanted,
            power = Math.Pow(10, Math.Floor(Math.Log10(raw)));
        double step =
            power
            * (raw / power) switch
            {
                <= 1 => 1,
                <= 2 => 2,
                <= 5 => 5,
                _ => 10,
            };
        int decimals = Math.Clamp((int)Math.Ceiling(-Math.Log10(step) - 1e-9), 0, 12);
        string format = "0." + new string('0', decimals);
        var ticks = new List<Tick>();
        for (double i = Math.Ceiling(Min / step - 1e-9); i * step <= Max + step * 1e-9; i++)
            ticks.Add(
                new(i * step, Math.Round(i * step + 0.0, decimals).ToString(format, CultureInfo.InvariantCulture))
            );
        return ticks;
    }

    private List<Tick> LogarithmicTicks(int wanted)
    {
        // Over many decades their texts would run into each other: then one a decade.
        int[] leads = 3 * Math.Log10(Max / Min) <= 2 * wanted ? [1, 2, 5] : [1];
        var ticks = new List<Tick>();
        for (int power = (int)Math.Floor(Math.Log10(Min)); power <= Math.Log10(Max); power++)
            foreach (int lead in leads)
            {
                double value = lead * Math.Pow(10, power);
                if (value >= Min * (1 - 1e-12) && value <= Max * (1 + 1e-12))
                    ticks.Add(new(value, value.ToString("0.######", CultureInfo.InvariantCulture)));
            }
        return ticks;
    }
}
