using System.Globalization;

namespace CalibGeom.Objects.Families;

/// <summary>
/// The part of a family that one run makes: every <see cref="Of"/>th object, beginning with number <see cref="Part"/>.
/// All parts together make each object once. Immutable.
/// </summary>
public sealed record FamilyShard
{
    /// <summary>The most parts.</summary>
    public const int MostParts = 100_000;

    /// <summary>A part.</summary>
    /// <param name="part">1 to <paramref name="of"/>.</param>
    /// <param name="of">How many parts there are, 1 to <see cref="MostParts"/>.</param>
    /// <exception cref="ArgumentException">One of them lies outside.</exception>
    public FamilyShard(int part, int of)
    {
        Of = (int)Require.Within(of, 1, MostParts, "number of parts", "", nameof(of));
        Part = (int)Require.Within(part, 1, of, "part", "", nameof(part));
    }

    /// <summary>All of it.</summary>
    public static FamilyShard Whole { get; } = new(1, 1);

    /// <summary>Which part, 1 to <see cref="Of"/>.</summary>
    public int Part { get; }

    /// <summary>How many parts there are.</summary>
    public int Of { get; }

    /// <summary>Reads <c>3/16</c>.</summary>
    /// <param name="text">The text.</param>
    /// <exception cref="InputException">It is no part of a whole.</exception>
    public static FamilyShard Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        string[] parts = text.Split('/');
        return
            parts.Length == 2
            && int.TryParse(parts[0], NumberStyles.None, CultureInfo.InvariantCulture, out int part)
            && int.TryParse(parts[1], NumberStyles.None, CultureInfo.InvariantCulture, out int of)
            && of is >= 1 and <= MostParts
            && part >= 1
            && part <= of
            ? new FamilyShard(part, of)
            : throw new InputException(
                InputIds.Family,
                FormattableString.Invariant(
                    $"{text} is no part of a family. Write PART/PARTS with PARTS up to {MostParts} and PART from 1 to PARTS, such as 3/16."
                )
            );
    }

    /// <summary>The numbers of the objects in this part, ascending.</summary>
    /// <param name="count">How many objects the family has.</param>
    public IEnumerable<int> Numbers(int count)
    {
        for (long number = Part; number <= count; number += Of)
            yield return (int)number;
    }
}
