namespace CalibGeom.Verification.Trends.Charts;

/// <summary>
/// The limits that were worked out last, since series of one kind are judged by the same ones again and again. All
/// memos are equal: what they hold follows from what they are asked, whichever thread asks.
/// </summary>
internal sealed class ChartMemo : IEquatable<ChartMemo>
{
    private Known? last;

    internal ChartDesign For(double length)
    {
        Known? known = last;
        if (known?.Length != length)
            last = known = new Known(length, ChartDesign.For(length));
        return known.Design;
    }

    public bool Equals(ChartMemo? other) => other is not null;

    public override bool Equals(object? obj) => Equals(obj as ChartMemo);

    public override int GetHashCode() => 0;

    private sealed record Known(double Length, ChartDesign Design);
}
