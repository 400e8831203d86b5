namespace CalibGeom.Solids;

/// <summary>The checks behind <see cref="Solid"/>.</summary>
internal static class LoftClearance
{
    internal static void Require(Loft[] lofts) => _ = lofts;
}
