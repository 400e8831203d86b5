using CalibGeom.TestObjects.Parts.Nest;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Objects.Families;

/// <summary>
/// Every combination of the values of some axes, laid over one spec. Specs are made when they are asked for. Immutable
/// and safe to share between threads.
/// </summary>
public sealed class ObjectFamily
{
    /// <summary>The most objects of a family.</summary>
    public const int MostObjects = 1_000_000;

    private static readonly string Clearances = NestParameters.Clearances.Path;

    /// <summary>A family.</summary>
    /// <param name="name">The name of its objects, to which their number is added.</param>
    /// <param name="basis">The spec that the values are set in.</param>
    /// <param name="axes">At least one axis, each with another parameter.</param>
    /// <exception cref="InputException">Two axes have one parameter, a value is refused, or there are more than
    /// <see cref="MostObjects"/> combinations.</exception>
    public ObjectFamily(string name, TestObjectSpec basis, IReadOnlyList<SweepAxis> axes)
    {
        ArgumentException.ThrowIfNullOrEmpty(name);
        ArgumentNullException.ThrowIfNull(basis);
        ArgumentNullException.ThrowIfNull(axes);
        (Name, Basis, Axes) = (name, basis, axes);
        if (axes.GroupBy(a => a.Name).FirstOrDefault(g => g.Count() > 1) is { } twice)
            throw new InputException(InputIds.Family, $"{twice.Key} is swept twice. Give all its values at once.");
        double count = axes.Aggregate(1.0, (product, axis) => product * axis.Values.Count);
        if (axes.Count == 0 || count > MostObjects)
            throw new InputException(
                InputIds.Family,
                FormattableString.Invariant(
                    $"The sweep makes {(axes.Count == 0 ? 0 : count)} objects; 1 to {MostObjects} are allowed."
                )
            );
        Count = (int)count;
        RequireValues();
    }

    /// <summary>The name of its objects.</summary>
    public string Name { get; }

    /// <summary>The spec that values are set in.</summary>
    public TestObjectSpec Basis { get; }

    /// <summary>The axes.</summary>
    public IReadOnlyList<SweepAxis> Axes { get; }

    /// <summary>The number of objects.</summary>
    public int Count { get; }

    /// <summary>An object.</summary>
    /// <param name="number">1 to <see cref="Count"/>; the last axis changes fastest.</param>
    /// <exception cref="ArgumentOutOfRangeException">No such object.</exception>
    /// <exception cref="InputException">Its values do not go together.</exception>
    public FamilyMember Member(int number)
    {
        string[] values = ValuesOf(number);
        return new FamilyMember(number, values, SpecOf(values));
    }

    /// <summary>The value of an object on each axis.</summary>
    internal string[] ValuesOf(int number)
    {
        if (number < 1 || number > Count)
            throw new ArgumentOutOfRangeException(nameof(number), number, $"The objects are numbered 1 to {Count}.");
        var values = new string[Axes.Count];
        int rest = number - 1;
        for (int a = values.Length - 1; a >= 0; a--)
        {
            values[a] = Axes[a].Values[rest % Axes[a].Values.Count];
            rest /= Axes[a].Values.Count;
        }
        return values;
    }

    /// <summary>The number as text, as long as the last one's, so that names sort in order.</summary>
    /// <param name="number">1 to <see cref="Count"/>.</param>
    public string Label(int number)
    {
        int digits = Count.ToString(System.Globalization.CultureInfo.InvariantCulture).Length;
        return number.ToString(System.Globalization.CultureInfo.InvariantCulture).PadLeft(digits, '0');
    }

    private TestObjectSpec SpecOf(IReadOnlyList<string> values)
    {
        TestObjectSpec spec = SpecJson.With(
            Basis,
            Axes.Zip(values).Where(v => v.First.Name != Clearances).Select(v => $"{v.First.Name}={v.Second}")
        );
        string? clearances = Axes.Zip(values).FirstOrDefault(v => v.First.Name == Clearances).Second;
        if (clearances is null)
            return spec;
        // One value is that of every joint, however many there are.
        int joints =
            spec.Nest is { } nest && !clearances.Contains(',', StringComparison.Ordinal) ? nest.Sizes.Count - 1 : 1;
        return SpecJson.With(
            spec,
            [$"{Clearances}={string.Join(',', Enumerable.Repeat(clearances, Math.Max(1, joints)))}"]
        );
    }

    /// <summary>Each value once, so that a bad one is told before anything is made.</summary>
    private void RequireValues()
    {
        string[] first = [.. Axes.Select(a => a.Values[0])];
        for (int a = 0; a < first.Length; a++)
            foreach (string value in Axes[a].Values)
                SpecOf([.. first.Select((v, i) => i == a ? value : v)]);
    }
}
