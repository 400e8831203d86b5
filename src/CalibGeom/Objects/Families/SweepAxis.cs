using System.Globalization;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Objects.Families;

/// <summary>A parameter and the values that it takes, as text. Immutable.</summary>
public sealed record SweepAxis
{
    /// <summary>The most values of one axis.</summary>
    public const int MostValues = 100_000;

    /// <summary>An axis.</summary>
    /// <param name="name">The parameter, such as <c>columns.lean</c>.</param>
    /// <param name="values">At least one value, each as <c>--set</c> takes it.</param>
    /// <exception cref="ArgumentException">There is no value, or more than <see cref="MostValues"/>.</exception>
    public SweepAxis(string name, IReadOnlyList<string> values)
    {
        ArgumentException.ThrowIfNullOrEmpty(name);
        ArgumentNullException.ThrowIfNull(values);
        if (values.Count is 0 or > MostValues)
            throw new ArgumentException(
                $"{name} takes {values.Count} values; 1 to {MostValues} are allowed.",
                nameof(values)
            );
        (Name, Values) = (name, values);
    }

    /// <summary>The parameter.</summary>
    public string Name { get; }

    /// <summary>Its values, in order.</summary>
    public IReadOnlyList<string> Values { get; }

    /// <summary>
    /// Reads <c>NAME=FROM:TO:STEP</c> (both ends included) or <c>NAME=VALUE,VALUE,...</c>; values that hold commas
    /// themselves are parted by semicolons.
    /// </summary>
    /// <param name="text">The text.</param>
    /// <exception cref="InputException">The parameter is not known, or the values are no such range or
    /// list.</exception>
    public static SweepAxis Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        int sign = text.IndexOf('=', StringComparison.Ordinal);
        string name = sign < 0 ? text : text[..sign].Trim();
        if (!SpecJson.ParameterNames.Contains(name))
            throw new InputException(
                InputIds.Family,
                $"{text}: there is no parameter {name}. Write NAME=FROM:TO:STEP or NAME=VALUE,VALUE, such as "
                    + "nest.clearances=0.03:0.15:0.01."
            );
        string values = sign < 0 ? "" : text[(sign + 1)..].Trim();
        if (values.Length == 0)
            throw new InputException(
                InputIds.Family,
                $"{text}: no value is given. Write {name}=FROM:TO:STEP or {name}=VALUE,VALUE."
            );
        return new SweepAxis(
            name,
            values.Contains(':', StringComparison.Ordinal) ? Range(text, values) : List(text, values)
        );
    }

    private static string[] List(string text, string values)
    {
        string[] parts = values.Split(
            values.Contains(';', StringComparison.Ordinal) ? ';' : ',',
            StringSplitOptions.TrimEntries
        );
        if (parts.Any(p => p.Length == 0))
            throw new InputException(
                InputIds.Family,
                $"{text}: a value is empty. Leave out the comma that stands alone."
            );
        return parts.Length <= MostValues ? parts : throw TooMany(text, parts.Length);
    }

    private static string[] Range(string text, string values)
    {
        string[] parts = values.Split(':');
        if (parts.Length != 3)
            throw new InputException(InputIds.Family, $"{text}: a range is FROM:TO:STEP, such as 0.03:0.15:0.01.");
        decimal[] numbers = Array.ConvertAll(parts, p => Number(text, p));
        (decimal from, decimal to, decimal step) = (numbers[0], numbers[1], numbers[2]);
        if (step <= 0 || to < from)
            throw new InputException(InputIds.Family, $"{text}: a range goes up from FROM to TO by a STEP above 0.");
        decimal count = Math.Floor((to - from) / step) + 1;
        if (count > MostValues)
            throw TooMany(text, count);
        return
        [
            .. Enumerable.Range(0, (int)count).Select(i => (from + i * step).ToString(CultureInfo.InvariantCulture)),
        ];
    }

    private static decimal Number(string text, string part) =>
        decimal.TryParse(
            part,
            NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint,
            CultureInfo.InvariantCulture,
            out decimal value
        )
        && Math.Abs(value) <= 1_000_000
            ? value
            : throw new InputException(
                InputIds.Family,
                $"{text}: '{part}' is no number up to 1000000. Write it with a decimal point."
            );

    private static InputException TooMany(string text, decimal count) =>
        new(
            InputIds.Family,
            FormattableString.Invariant(
                $"{text}: {count} values; at most {MostValues} are allowed. Take a larger step."
            )
        );
}
