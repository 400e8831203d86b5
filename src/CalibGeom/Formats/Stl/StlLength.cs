namespace CalibGeom.Formats.Stl;

/// <summary>Whether the length of a binary STL agrees with the count it declares.</summary>
internal static class StlLength
{
    internal static bool Agrees(long length, long declared) =>
        length == StlTriangleStream.PreambleLength + declared * StlFacet.Size;

    internal static void Require(string name, long length, long declared)
    {
        if (length < StlTriangleStream.PreambleLength)
            throw new InputException(
                InputIds.Mesh,
                $"{name} has {length} bytes; a binary STL has at least 84. It is truncated or no mesh; export it again."
            );
        if (Agrees(length, declared))
            return;
        long expected = StlTriangleStream.PreambleLength + declared * StlFacet.Size;
        string fault =
            length < expected
                ? $"it ends at byte {length}: truncated or mis-counted"
                : $"{length - expected} bytes too many from byte {expected} on: over-long or mis-counted";
        throw new InputException(
            InputIds.Mesh,
            $"{name} declares {declared} facets at byte 80, which makes {expected} bytes, but {fault}. "
                + "Export it again, or read it leniently."
        );
    }
}
