namespace CalibGeom.TestObjects.Specs;

/// <summary>The line that a mesh file of a test object carries.</summary>
public static class ObjectHeader
{
    /// <summary>Raised whenever the same spec gives another geometry than before.</summary>
    public const int GeometryVersion = 2;

    private const int LongestName = 40;

    /// <summary>Name, geometry version, unit and digest, short enough for the 80 bytes of an STL header.</summary>
    /// <param name="name">The name; what is beyond 40 characters is left away.</param>
    /// <param name="digest">The digest of the spec.</param>
    public static string Of(string name, string digest)
    {
        ArgumentNullException.ThrowIfNull(name);
        return $"{(name.Length <= LongestName ? name : name[..LongestName])} geometry {GeometryVersion} mm "
            + $"digest {digest}";
    }
}
