namespace CalibGeom.Pictures.Objects;

/// <summary>A sheet of paper, long side level. Immutable.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Width">mm.</param>
/// <param name="Height">mm.</param>
public sealed record Paper(string Name, double Width, double Height)
{
    /// <summary>297 x 210 mm (ISO 216).</summary>
    public static Paper A4 { get; } = new("A4", 297, 210);

    /// <summary>11 x 8.5 inches, 279.4 x 215.9 mm.</summary>
    public static Paper Letter { get; } = new("Letter", 279.4, 215.9);

    /// <summary>The paper with a name, in any case.</summary>
    /// <param name="name"><c>a4</c> or <c>letter</c>.</param>
    /// <exception cref="InputException">There is none of that name.</exception>
    public static Paper Parse(string name) =>
        new[] { A4, Letter }.FirstOrDefault(p => p.Name.Equals(name, StringComparison.OrdinalIgnoreCase))
        ?? throw new InputException(InputIds.Other, $"There is no paper \"{name}\"; it is a4 or letter.");
}
