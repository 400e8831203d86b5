using CalibGeom.Objects;

namespace CalibGeom.Cli.Shared;

/// <summary>The object that readings are of.</summary>
/// <param name="Object">The object.</param>
/// <param name="Assumed">What is to be said when nobody said what it is; else null.</param>
internal sealed record FoundObject(KnownObject Object, Finding? Assumed)
{
    /// <summary>The larger pixel pitch that its spec names, mm, or null.</summary>
    internal double? PixelPitch => Object.Process is { PixelPitch: var p } ? Math.Max(p.X, p.Y) : null;
}
