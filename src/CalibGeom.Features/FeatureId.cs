using System.Globalization;
using CalibGeom.Features.Files;

namespace CalibGeom.Features;

/// <summary>
/// The name of one thing to measure, count or feel, or of a whole item: <c>[coupon/]item[.size][.axis]</c>, the item
/// being a part and often a number: <c>A1/box2.inside.y</c>, <c>span.x</c>, <c>joint1.fit</c>, <c>box2</c>. It is
/// parsed once and printed once, and what is printed is what was parsed. Parts and sizes of one's own are named like
/// ours. Immutable, compares by value, orders by its text.
/// </summary>
public sealed record FeatureId : IComparable<FeatureId>
{
    /// <summary>The most characters of an id.</summary>
    public const int MostCharacters = 200;

    private readonly string text;

    private FeatureId(string text, string coupon, string part, int? number, string size, string axis)
    {
        this.text = text;
        Coupon = coupon;
        Part = part;
        Number = number;
        Size = size;
        Axis = axis;
    }

    /// <summary>The label of the coupon it belongs to, <c>A1</c> of <c>A1/box1.outside.x</c>, or empty.</summary>
    public string Coupon { get; }

    /// <summary>
    /// The part: <c>box</c>, <c>joint</c>, <c>column</c>, <c>slots</c>, or a user's own. Never empty.
    /// </summary>
    public string Part { get; }

    /// <summary>Which of several such parts, from 0; null where the id has no number.</summary>
    public int? Number { get; }

    /// <summary>
    /// What of it: <c>outside</c>, <c>inside</c>, <c>height</c>, <c>fit</c>, <c>stood</c>, <c>open</c> ...; empty for a
    /// length that is named by its axis alone (<c>span.x</c>) and for a whole item (<c>box2</c>).
    /// </summary>
    public string Size { get; }

    /// <summary>The axis at the end of the id: <c>x</c>, <c>y</c>, <c>z</c> or empty.</summary>
    public string Axis { get; }

    /// <summary>Part and number without coupon, size and axis: <c>box2</c>.</summary>
    public string Item => Name(Part, Number);

    /// <summary>Part and number as a sentence names them: <c>box 2</c>, <c>keyway</c>.</summary>
    public string Spoken => Number is { } n ? $"{Part} {n.ToString(CultureInfo.InvariantCulture)}" : Part;

    /// <summary>The same thing without the coupon's label.</summary>
    public FeatureId OfObject => Coupon.Length == 0 ? this : Of(Part, Number, Size, Axis);

    /// <summary>The same thing of a coupon.</summary>
    /// <param name="coupon">The coupon's label; empty for none.</param>
    /// <exception cref="ArgumentException">The label makes no id.</exception>
    public FeatureId On(string coupon) => coupon == Coupon ? this : Of(Part, Number, Size, Axis, coupon);

    /// <summary>The same item with another size or axis.</summary>
    /// <param name="size">The size, such as <c>inside</c>; may be empty.</param>
    /// <param name="axis"><c>x</c>, <c>y</c>, <c>z</c> or empty.</param>
    /// <exception cref="ArgumentException">That makes no id.</exception>
    public FeatureId With(string size, string axis = "") => Of(Part, Number, size, axis, Coupon);

    /// <summary>An id from what it is made of.</summary>
    /// <param name="part">The part, such as <c>box</c>; not empty.</param>
    /// <param name="number">Its number, or null.</param>
    /// <param name="size">The size, or empty.</param>
    /// <param name="axis"><c>x</c>, <c>y</c>, <c>z</c> or empty.</param>
    /// <param name="coupon">The coupon's label, or empty.</param>
    /// <exception cref="ArgumentException">It would read back as something else: a part that ends in a digit, an
    /// unknown axis, an empty word between dots.</exception>
    public static FeatureId Of(string part, int? number = null, string size = "", string axis = "", string coupon = "")
    {
        string text =
            (coupon.Length > 0 ? coupon + "/" : "")
            + Name(part, number)
            + (size.Length > 0 ? "." + size : "")
            + (axis.Length > 0 ? "." + axis : "");
        return
            TryParse(text) is { } id
            && (id.Coupon, id.Part, id.Number, id.Size, id.Axis) == (coupon, part, number, size, axis)
            ? id
            : throw new ArgumentException(
                $"\"{text}\" does not read back as part {part}, size {size} and axis {axis}. A part is a word that "
                    + "does not end in a digit, an axis is x, y, z or empty.",
                nameof(part)
            );
    }

    /// <summary>The id that a text is.</summary>
    /// <param name="text">Such as <c>box1.outside.x</c>.</param>
    /// <exception cref="ArgumentException">It is none; see <see cref="TryParse"/>.</exception>
    public static FeatureId Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return TryParse(text)
            ?? throw new ArgumentException(
                $"\"{text}\" is no feature id. An id is words between dots, such as box1.outside.x, at most "
                    + $"{MostCharacters} characters.",
                nameof(text)
            );
    }

    /// <summary>
    /// The id that a text is; null for an empty or longer text than <see cref="MostCharacters"/>, one with control
    /// characters or with white space at an end, one that begins as a spreadsheet's formula does (=, +, -, @), and one
    /// with nothing before or between its dots and slashes.
    /// </summary>
    /// <param name="text">Such as <c>box1.outside.x</c>; may be null.</param>
    public static FeatureId? TryParse(string? text)
    {
        if (text is null || text.Length is 0 or > MostCharacters || text.Any(char.IsControl) || text.Trim() != text)
            return null;
        if (CsvText.BeginsAsFormula(text))
            return null;
        int slash = text.LastIndexOf('/');
        string[] words = text[(slash + 1)..].Split('.');
        if (slash == 0 || Array.Exists(words, w => w.Length == 0 || w.Trim() != w))
            return null;
        string axis = words.Length > 1 && words[^1] is "x" or "y" or "z" ? words[^1] : "";
        string size = string.Join('.', words[1..(axis.Length > 0 ? ^1 : ^0)]);
        (string part, int? number) = Split(words[0]);
        return new FeatureId(text, slash < 0 ? "" : text[..slash], part, number, size, axis);
    }

    /// <summary>Whether both are the same text.</summary>
    /// <param name="other">The other id.</param>
    public bool Equals(FeatureId? other) => other is not null && text == other.text;

    /// <inheritdoc/>
    public override int GetHashCode() => string.GetHashCode(text, StringComparison.Ordinal);

    /// <summary>Ordinal order of the texts.</summary>
    /// <param name="other">The other id.</param>
    public int CompareTo(FeatureId? other) => string.CompareOrdinal(text, other?.text);

    /// <summary>The id as text.</summary>
    public override string ToString() => text;

    /// <summary>The id as text.</summary>
    /// <param name="id">The id.</param>
    public static implicit operator string(FeatureId id)
    {
        ArgumentNullException.ThrowIfNull(id);
        return id.text;
    }

    private static string Name(string part, int? number) =>
        number is { } n ? part + n.ToString(CultureInfo.InvariantCulture) : part;

    /// <summary>Digits at the end are a number when it prints as they stand: box01 is a part of its own.</summary>
    private static (string Part, int? Number) Split(string item)
    {
        int end = item.Length;
        while (end > 0 && char.IsAsciiDigit(item[end - 1]))
            end--;
        ReadOnlySpan<char> digits = item.AsSpan(end);
        bool plain = end > 0 && digits.Length is > 0 and < 10 && (digits.Length == 1 || digits[0] != '0');
        return plain ? (item[..end], int.Parse(digits, NumberStyles.None, CultureInfo.InvariantCulture)) : (item, null);
    }
}
