using System.Globalization;

namespace CalibGeom.Verification.Readings;

/// <summary>
/// The readings of one print with what they were taken with and in what conditions. Immutable and safe to share between
/// threads.
/// </summary>
public sealed class ReadingSet
{
    private readonly Reading[] readings;
    private readonly Instrument[] instruments;
    private readonly Dictionary<string, Instrument> described;

    /// <summary>A set of readings.</summary>
    /// <param name="readings">The readings, in any order.</param>
    /// <param name="instruments">The instruments that differ from the ordinary caliper, each name once; null for
    /// none.</param>
    /// <param name="digest">The digest of the spec that was printed (16 hex digits), or null.</param>
    /// <param name="temperature">Temperature of the part and the instrument in degrees C, -20 to 60, or null.</param>
    /// <param name="state">What had been done to the part, or null.</param>
    /// <param name="expansion">Linear expansion coefficient of the material, 1/K, 0 to 1e-3, or null; needed to correct
    /// sizes to 20 degrees C.</param>
    /// <param name="material">Whether the material gives under the jaws, or null when nobody says: then it is carried
    /// as if it might.</param>
    /// <param name="comments">Remarks kept from a file.</param>
    /// <exception cref="ArgumentException">A value is out of range or an instrument stands twice.</exception>
    public ReadingSet(
        IEnumerable<Reading> readings,
        IEnumerable<Instrument>? instruments = null,
        string? digest = null,
        double? temperature = null,
        PartState? state = null,
        double? expansion = null,
        Material? material = null,
        IEnumerable<string>? comments = null
    )
    {
        ArgumentNullException.ThrowIfNull(readings);
        this.readings = readings.ToArray();
        this.instruments = (instruments ?? []).ToArray();
        described = new Dictionary<string, Instrument>(StringComparer.Ordinal);
        foreach (Instrument i in this.instruments)
            if (!described.TryAdd(i.Name, i))
                throw new ArgumentException($"Instrument {i.Name} stands twice.", nameof(instruments));
        Digest = digest;
        Temperature = Check(temperature, -20, 60, "degrees C", nameof(temperature));
        State = state;
        Expansion = Check(expansion, 0, 1e-3, "1/K", nameof(expansion));
        Material = material;
        Comments = (comments ?? []).ToArray();
    }

    /// <summary>The readings.</summary>
    public IReadOnlyList<Reading> Readings => readings;

    /// <summary>The instruments that were described.</summary>
    public IReadOnlyList<Instrument> Instruments => instruments;

    /// <summary>The digest of the spec that was printed, or null.</summary>
    public string? Digest { get; }

    /// <summary>Temperature of the part and the instrument, degrees C, or null.</summary>
    public double? Temperature { get; }

    /// <summary>What had been done to the part, or null.</summary>
    public PartState? State { get; }

    /// <summary>Linear expansion coefficient of the material, 1/K, or null.</summary>
    public double? Expansion { get; }

    /// <summary>Whether the material gives under the jaws, or null when nobody says.</summary>
    public Material? Material { get; }

    /// <summary>Remarks kept from a file.</summary>
    public IReadOnlyList<string> Comments { get; }

    /// <summary>
    /// The coupons that have readings, in ordinal order; one empty string when no reading carries a prefix.
    /// </summary>
    public IReadOnlyList<string> Coupons =>
        field ??= readings
            .Where(r => !r.IsReference)
            .Select(r => r.Coupon)
            .Distinct()
            .Order(StringComparer.Ordinal)
            .ToArray();

    /// <summary>The instrument of a name; an ordinary caliper when it was not described.</summary>
    /// <param name="name">The name.</param>
    public Instrument InstrumentOf(string name) => described.GetValueOrDefault(name) ?? new Instrument(name);

    internal bool Describes(string instrument) =>
        described.TryGetValue(instrument, out Instrument? known) && !known.IsAssumed;

    /// <summary>What was counted; of different counts the middle one, and of two the lower.</summary>
    internal int? CountOf(FeatureId id)
    {
        int[] counts =
        [
            .. Readings.Where(r => r.Id == id && r.Kind == ReadingKind.Count).Select(r => (int)r.Value).Order(),
        ];
        return counts.Length > 0 ? counts[(counts.Length - 1) / 2] : null;
    }

    /// <summary>
    /// The same conditions with the readings of one coupon, and those of references, which belong to all.
    /// </summary>
    /// <param name="coupon">The coupon's prefix without the slash; empty for readings without one.</param>
    public ReadingSet ForCoupon(string coupon)
    {
        ArgumentNullException.ThrowIfNull(coupon);
        IEnumerable<Reading> kept = readings.Where(r => r.Coupon == coupon || r.IsReference);
        return new ReadingSet(kept, instruments, Digest, Temperature, State, Expansion, Material, Comments);
    }

    /// <summary>
    /// Readings of one print that stand in several files, together. What one file leaves out another may say.
    /// </summary>
    /// <param name="sets">At least one set.</param>
    /// <exception cref="InputException">Two sets say different things about the print or an instrument; conditions are
    /// never pooled silently.</exception>
    public static ReadingSet Join(IReadOnlyList<ReadingSet> sets)
    {
        ArgumentNullException.ThrowIfNull(sets);
        if (sets.Count == 0)
            throw new ArgumentException("sets is empty.", nameof(sets));
        return new ReadingSet(
            sets.SelectMany(s => s.readings),
            sets.SelectMany(s => s.instruments)
                .GroupBy(i => i.Name, StringComparer.Ordinal)
                .Select(g => Same(g, $"instrument {g.Key}")!),
            Same(sets.Select(s => s.Digest), "digest"),
            Same(sets.Select(s => s.Temperature), "temperature"),
            Same(sets.Select(s => s.State), "state"),
            Same(sets.Select(s => s.Expansion), "expansion"),
            Same(sets.Select(s => s.Material), "material"),
            sets.SelectMany(s => s.Comments)
        );
    }

    private static T? Same<T>(IEnumerable<T?> values, string what)
    {
        T?[] said = values.Where(v => v is not null).Distinct().ToArray();
        return said.Length > 1
            ? throw new InputException(
                InputIds.Readings,
                $"The files say different things about the {what}. Readings are pooled only when they were "
                    + $"taken in the same conditions; use one file at a time."
            )
            : said.FirstOrDefault();
    }

    private static double? Check(double? value, double low, double high, string unit, string name) =>
        value is null || (value >= low && value <= high)
            ? value
            : throw new ArgumentException(
                string.Create(CultureInfo.InvariantCulture, $"{name} is {value}; it runs from {low} to {high} {unit}."),
                name
            );
}
