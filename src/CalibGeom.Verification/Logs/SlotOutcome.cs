namespace CalibGeom.Verification.Logs;

/// <summary>How many tunnels of the slot comb stayed open. Immutable.</summary>
public sealed class SlotOutcome
{
    private readonly double[] heights;

    /// <summary>A comb.</summary>
    /// <param name="heights">Designed heights in mm, rising, each above 0 and at most 20; at least one.</param>
    /// <param name="open">How many were open, 0 to their number; the lowest ones close first.</param>
    /// <exception cref="ArgumentException">The heights do not rise or the count is impossible.</exception>
    public SlotOutcome(IEnumerable<double> heights, int open)
    {
        ArgumentNullException.ThrowIfNull(heights);
        this.heights = heights.ToArray();
        for (int i = 0; i < this.heights.Length; i++)
            if (!(this.heights[i] > (i == 0 ? 0 : this.heights[i - 1]) && this.heights[i] <= 20))
                throw new ArgumentException(
                    FormattableString.Invariant(
                        $"Slot heights must rise from above 0 to at most 20 mm; height {i + 1} is {this.heights[i]}."
                    ),
                    nameof(heights)
                );
        if (this.heights.Length == 0)
            throw new ArgumentException("A slot comb has at least one slot.", nameof(heights));
        if (open < 0 || open > this.heights.Length)
            throw new ArgumentException(
                $"Of {this.heights.Length} slots 0 to {this.heights.Length} can be open, not {open}.",
                nameof(open)
            );
        Open = open;
    }

    /// <summary>The heights of the standard object in mm (R10): 0.16 to 0.80.</summary>
    public static IReadOnlyList<double> StandardHeights { get; } = [0.16, 0.2, 0.25, 0.315, 0.4, 0.5, 0.63, 0.8];

    /// <summary>Designed heights in mm, rising.</summary>
    public IReadOnlyList<double> Heights => heights;

    /// <summary>How many were open.</summary>
    public int Open { get; }

    /// <summary>The height in mm of the highest closed slot; minus infinity when all are open.</summary>
    public double HighestClosed =>
        Open == heights.Length ? double.NegativeInfinity : heights[heights.Length - Open - 1];

    /// <summary>The height in mm of the lowest open slot; plus infinity when all are closed.</summary>
    public double LowestOpen => Open == 0 ? double.PositiveInfinity : heights[heights.Length - Open];
}
