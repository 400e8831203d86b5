namespace CalibGeom.Pictures.Drawings;

/// <summary>A colour with opacity.</summary>
/// <param name="R">Red, 0 to 255.</param>
/// <param name="G">Green, 0 to 255.</param>
/// <param name="B">Blue, 0 to 255.</param>
/// <param name="Opacity">0 (invisible) to 1 (opaque, the default).</param>
public readonly record struct Ink(byte R, byte G, byte B, double Opacity = 1)
{
    /// <summary>Text and outlines.</summary>
    public static Ink Dark { get; } = new(0x25, 0x2B, 0x33);

    /// <summary>Secondary text, axes and frames.</summary>
    public static Ink Muted { get; } = new(0x6B, 0x73, 0x7C);

    /// <summary>Grid lines and faint borders.</summary>
    public static Ink Faint { get; } = new(0xDA, 0xDD, 0xE0);

    /// <summary>The ground of a picture.</summary>
    public static Ink Paper { get; } = new(0xFF, 0xFF, 0xFF);

    /// <summary>A filled area that is not the subject.</summary>
    public static Ink Stone { get; } = new(0xB4, 0xBA, 0xC0);

    /// <summary>The first colour of a series.</summary>
    public static Ink Blue { get; } = new(0x2F, 0x5D, 0x8C);

    /// <summary>The second colour of a series.</summary>
    public static Ink Ochre { get; } = new(0xB5, 0x7F, 0x22);

    /// <summary>The third colour of a series.</summary>
    public static Ink Plum { get; } = new(0x7A, 0x4B, 0x7E);

    /// <summary>The fourth colour of a series.</summary>
    public static Ink Teal { get; } = new(0x2B, 0x7F, 0x80);

    /// <summary>The same colour with another opacity.</summary>
    /// <param name="opacity">0 to 1.</param>
    public Ink WithOpacity(double opacity) => this with { Opacity = opacity };

    /// <summary>The colour as <c>#rrggbb</c>, without its opacity.</summary>
    public override string ToString() => FormattableString.Invariant($"#{R:x2}{G:x2}{B:x2}");
}
