using System.Globalization;

namespace CalibGeom.Cli.Shared;

/// <summary>An option value such as <c>name=0.02</c> or <c>name=0.02/0.01/0.05</c>.</summary>
internal static class Assignment
{
    private static string Meant(string name, IEnumerable<string> names) =>
        Spelling.Nearest(name, names, Math.Max(1, name.Length / 3)) is { } near ? $" Did you mean {near}?" : "";

    /// <exception cref="InputException">The name is not known, or a value is no number or out of range.</exception>
    internal static T Read<T>(
        string option,
        string what,
        string text,
        IEnumerable<string> names,
        Func<string, double[], T> set
    )
    {
        string[] parts = text.Split('=', 2);
        if (parts.Length != 2 || !names.Contains(parts[0], StringComparer.Ordinal))
            throw new InputException(
                InputIds.Option,
                $"{option} {text} sets no known {what}.{Meant(parts[0], names)} The names are {string.Join(", ", names)}; write NAME=VALUE."
            );
        double[] values = parts[1]
            .Split('/')
            .Select(v =>
                double.TryParse(v, NumberStyles.Float, CultureInfo.InvariantCulture, out double value)
                    ? value
                    : throw new InputException(
                        InputIds.Option,
                        $"{option} {text}: '{v}' is no number. Write it with a decimal point."
                    )
            )
            .ToArray();
        try
        {
            return set(parts[0], values);
        }
        catch (ArgumentException e)
        {
            throw InputException.Because(InputIds.Option, e, $"{option} {text}: ");
        }
    }
}
