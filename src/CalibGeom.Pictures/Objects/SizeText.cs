namespace CalibGeom.Pictures.Objects;

/// <summary>Sizes as drawings write them: to a micrometre, without needless zeros.</summary>
internal static class SizeText
{
    internal static string Of(double size) => FormattableString.Invariant($"{size:0.###}");
}
