using System.Buffers;

namespace CalibGeom.TestObjects.Specs;

/// <summary>What may be written on a test object, and small help with wording.</summary>
internal static class SpecText
{
    /// <summary>The characters in words.</summary>
    internal const string Allowed = "A-Z, a-z (drawn as capitals), 0-9, space, + - . , / : # % and the micro sign";

    /// <summary>The characters as a regular expression for the whole text.</summary>
    internal const string Pattern = "^[A-Za-z0-9 +.,/:#%\u00B5\u03BC-]*$";

    /// <summary>The characters themselves; both code points of the micro sign.</summary>
    internal static readonly SearchValues<char> Characters = SearchValues.Create(
        "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789 +-.,/:#%\u00B5\u03BC"
    );

    internal static string WithUnit(string number, string unit) => unit.Length == 0 ? number : $"{number} {unit}";
}
