namespace CalibGeom.TestObjects.Rules;

/// <summary>
/// How many pixels or layers a length becomes, when it is not known where in a pixel or layer it starts.
/// </summary>
/// <param name="Fewest">The smaller of the two counts.</param>
/// <param name="Most">The larger; equal when the length is a whole number.</param>
internal readonly record struct PixelCount(int Fewest, int Most)
{
    private const double Whole = 1e-6;

    internal static PixelCount Of(double length, double pitch)
    {
        double count = length / pitch,
            nearest = Math.Round(count);
        return Math.Abs(count - nearest) < Whole
            ? new((int)nearest, (int)nearest)
            : new((int)Math.Floor(count), (int)Math.Ceiling(count));
    }

    internal bool IsWhole => Fewest == Most;

    public override string ToString() => IsWhole ? $"{Fewest}" : $"{Fewest} or {Most}";
}
