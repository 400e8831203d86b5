using System.Globalization;

namespace CalibGeom.Objects.Families;

/// <summary>
/// The part of a family that one run makes: every <paramref name="Of"/>th object, beginning with number
/// <paramref name="Part"/>. All parts together make each object once.
/// </summary>
/// <param name="Part">1 to <paramref name="Of"/>.</param>
/// <param name="Of">How many parts there are, 1 to 100,000.</param>
public readonly record struct FamilyShard(int Part, int Of)
{
    /// <summary>All of it.</summary>
    public static FamilyShard Whole { get; } = new(1, 1);

    /// <summary>Reads <c>3/16</c>.</summary>
    /// <param name="text">The text.</param>
    /// <exception cref="InputException">It is no part of a whole.</exception>
    public static FamilyShard Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        string[] parts = text.Split('/');
        if (
            parts.Length != 2
            || !int.TryParse(parts[0], NumberStyles.None, CultureInfo.InvariantCulture, out int part)
            || !int.TryParse(parts[1], NumberStyles.None, CultureInfo.InvariantCulture, out int of)
            || of is < 1 or > 100_000
            || part < 1
            || part > of
        )
            throw new InputException(
                $"{text} is no part of a family. Write PART/PARTS with PART from 1 to PARTS, such as 3/16."
            );
        return new FamilyShard(part, of);
    }

    /// <summary>The numbers of the objects in this part, ascending.</summary>
    /// <param name="count">How many objects the family has.</param>
    public IEnumerable<int> Numbers(int count)
    {
        for (long number = Part; number <= count; number += Of)
            yield return (int)number;
    }
}
