namespace CalibGeom.TestObjects.Specs;

/// <summary>What a parameter's JSON value looks like.</summary>
internal enum SpecKind
{
    /// <summary>A string.</summary>
    Text,

    /// <summary>One of a few words.</summary>
    Word,

    /// <summary>A whole number.</summary>
    Count,

    /// <summary>A number.</summary>
    Number,

    /// <summary>A list of numbers.</summary>
    Numbers,

    /// <summary>A number, or <c>[x, y]</c>.</summary>
    PerAxis,

    /// <summary>A list of entries that are each a number or <c>[x, y]</c>.</summary>
    PerAxisList,

    /// <summary><c>[x, y, z]</c>.</summary>
    Size,
}
