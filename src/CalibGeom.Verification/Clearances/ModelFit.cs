using System.Globalization;
using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Clearances;

/// <summary>
/// Scale and growth of each axis that has readings, fitted together: axes share the biases of jaws. A reading of a face
/// is
/// W (1 + s) +- 2 g + face + form + jaw + step + scatter.
/// </summary>
internal sealed class ModelFit
{
    private readonly MatchedReadings matched;
    private readonly PredictionOptions options;
    private readonly HashSet<string> assumed;
    private readonly Dictionary<string, List<int>> rowsOf = new(StringComparer.Ordinal);
    private readonly Dictionary<string, (double S, double Freedom)> scatter = new(StringComparer.Ordinal);

    private ModelFit(MatchedReadings matched, PredictionOptions options, HashSet<string> assumed)
    {
        this.matched = matched;
        this.options = options;
        this.assumed = assumed;
        Faces = matched
            .Sizes.Select(g => (Group: g, Face: matched.Features.TryGetValue(g.Id, out Feature? f) ? Face.Of(f) : null))
            .Where(p => p.Face is not null)
            .Select(p => (p.Group, p.Face!))
            .ToArray();
        Axes = Faces.Select(f => f.Face.Axis).Distinct().Order(StringComparer.Ordinal).ToArray();
        System = new LinearSystem(2 * Axes.Count);
        foreach (
            IGrouping<string, ReadingGroup> g in matched
                .Sizes.Concat(matched.References)
                .GroupBy(g => g.Instrument.Name)
        )
            scatter[g.Key] = Scatter(g.ToArray());
        foreach ((ReadingGroup group, Face face) in Faces)
            AddFace(group, face);
        foreach (ReadingGroup group in matched.References)
            AddReference(group);
        foreach (string axis in Axes.Where(assumed.Contains))
            AddScalePrior(axis);
        System.Solve();
    }

    internal LinearSystem System { get; }

    internal IReadOnlyList<string> Axes { get; }

    internal IReadOnlyList<(ReadingGroup Group, Face Face)> Faces { get; }

    /// <summary>
    /// Fits; where readings leave scale less certain than it is among prints anyway, that knowledge is used.
    /// </summary>
    internal static ModelFit Of(MatchedReadings matched, PredictionOptions options)
    {
        var faces = matched
            .Sizes.Select(g => matched.Features.TryGetValue(g.Id, out Feature? f) ? Face.Of(f) : null)
            .OfType<Face>();
        HashSet<string> assumed = faces
            .GroupBy(f => f.Axis)
            .Where(g => g.Select(f => (f.Nominal, f.Inside)).Distinct().Count() < 2)
            .Select(g => g.Key)
            .ToHashSet(StringComparer.Ordinal);
        var fit = new ModelFit(matched, options, assumed);
        string[] vague = fit
            .Axes.Where(a =>
                !assumed.Contains(a) && fit.System.CoefficientUncertainty(fit.Index(a)) > options.ScalePrior
            )
            .ToArray();
        return vague.Length == 0 ? fit : new ModelFit(matched, options, [.. assumed, .. vague]);
    }

    internal bool ScaleAssumed(string axis) => assumed.Contains(axis);

    internal int Index(string axis) => 2 * Array.IndexOf((string[])Axes, axis);

    internal LinearTarget Scale(string axis) => Single(Index(axis));

    internal LinearTarget Growth(string axis) => Single(Index(axis) + 1);

    /// <summary>The clearance between two faces: half of pocket less peg.</summary>
    internal LinearTarget Clearance(Face peg, Face pocket, params (int Source, double Factor)[] more)
    {
        double[] c = new double[2 * Axes.Count];
        double design = (pocket.Nominal - peg.Nominal) / 2;
        c[Index(peg.Axis)] = design;
        c[Index(peg.Axis) + 1] = -2;
        return new LinearTarget(design, c, [(FaceSource(pocket), 0.5), (FaceSource(peg), -0.5), .. more]);
    }

    /// <summary>The size between two faces.</summary>
    internal LinearTarget Size(Face face, params (int Source, double Factor)[] more)
    {
        double[] c = new double[2 * Axes.Count];
        c[Index(face.Axis)] = face.Nominal;
        c[Index(face.Axis) + 1] = 2 * face.Sign;
        return new LinearTarget(face.Nominal, c, [(FaceSource(face), 1), .. more]);
    }

    /// <summary>The clearance from the readings of its two faces alone, or null when one was not read.</summary>
    internal LinearEstimate? Direct(Face peg, Face pocket)
    {
        if (!rowsOf.TryGetValue(peg.Id, out List<int>? pegs) || !rowsOf.TryGetValue(pocket.Id, out List<int>? pockets))
            return null;
        var combination = new List<(int, double)>();
        combination.AddRange(pockets.Select(r => (r, 0.5 * Weight(r, pockets))));
        combination.AddRange(pegs.Select(r => (r, -0.5 * Weight(r, pegs))));
        return System.Direct((pocket.Nominal - peg.Nominal) / 2, combination, Clearance(peg, pocket));
    }

    /// <summary>The growth of another print less that of this one.</summary>
    internal int Reprint(string axis) =>
        System.Source($"reprint.{axis}", "print to print", options.BetweenPrints, InputShape.Normal);

    private double Weight(int row, List<int> among) =>
        (double)Faces[row].Group.Count / among.Sum(r => Faces[r].Group.Count);

    private LinearTarget Single(int index)
    {
        double[] c = new double[2 * Axes.Count];
        c[index] = 1;
        return new LinearTarget(0, c, []);
    }

    /// <summary>Repeats of an instrument pooled with what is known of such instruments.</summary>
    private (double S, double Freedom) Scatter(ReadingGroup[] groups)
    {
        if (groups[0].Instrument.Repeatability is { } known)
            return (known, double.PositiveInfinity);
        double before = options.RepeatabilityDegreesOfFreedom;
        int freedom = groups.Sum(g => g.Count - 1);
        double squares =
            before * Instrument.DefaultRepeatability * Instrument.DefaultRepeatability
            + groups.Sum(g => g.SumOfSquares);
        return (Math.Sqrt(squares / (before + freedom)), before + freedom);
    }

    private void AddFace(ReadingGroup group, Face face)
    {
        double[] c = new double[2 * Axes.Count];
        c[Index(face.Axis)] = face.Nominal;
        c[Index(face.Axis) + 1] = 2 * face.Sign;
        var errors = new List<(int, double)>
        {
            (FaceSource(face), 1),
            (System.Source($"form.{face.Id}", "form of faces", options.FormError, InputShape.Normal), 1),
        };
        Jaw jaw = group.Instrument.Jaw ?? face.Jaw;
        AddInstrument(errors, group, jaw);
        if (matched.Set.Flexible)
            errors.Add(
                (
                    System.Source(
                        $"give.{jaw}",
                        $"give under the {ReadingWords.Of(jaw)} jaws",
                        options.FlexibleError,
                        InputShape.Normal
                    ),
                    1
                )
            );
        AddTemperature(errors, face.Nominal);
        if (!rowsOf.TryGetValue(face.Id, out List<int>? rows))
            rowsOf[face.Id] = rows = [];
        rows.Add(System.RowCount);
        System.Add(group.Mean - face.Nominal, c, [.. errors]);
    }

    private void AddReference(ReadingGroup group)
    {
        (Jaw jaw, double nominal) = MatchedReadings.ReferenceOf(group.Id);
        var errors = new List<(int, double)>
        {
            (System.Source(group.Id, "gauge", options.ReferenceUncertainty, InputShape.Normal), 1),
        };
        AddInstrument(errors, group, group.Instrument.Jaw ?? jaw);
        System.Add(group.Mean - nominal, new double[2 * Axes.Count], [.. errors]);
    }

    private void AddInstrument(List<(int, double)> errors, ReadingGroup group, Jaw jaw)
    {
        Instrument i = group.Instrument;
        string name = i.Name.Length > 0 ? i.Name : "the caliper";
        (double s, double freedom) = scatter[i.Name];
        errors.Add(
            (
                System.Source(
                    $"jaw.{i.Name}.{jaw}",
                    $"{ReadingWords.Of(jaw)} jaws of {name}",
                    i.ErrorOf(jaw),
                    InputShape.Rectangular
                ),
                1
            )
        );
        errors.Add(
            (
                System.Source(
                    $"step.{group.Id}.{i.Name}",
                    $"display step of {name}",
                    i.Resolution / Math.Sqrt(12),
                    InputShape.Rectangular
                ),
                1
            )
        );
        errors.Add(
            (
                System.Source(
                    string.Create(CultureInfo.InvariantCulture, $"scatter.{group.Id}.{i.Name}.{System.RowCount}"),
                    $"repeatability of {name}",
                    s / Math.Sqrt(group.Count),
                    InputShape.Normal,
                    freedom,
                    Evaluation.A
                ),
                1
            )
        );
    }

    /// <summary>The part's temperature is taken as known to 1 K and its expansion coefficient to 10 %.</summary>
    private void AddTemperature(List<(int, double)> errors, double nominal)
    {
        if (matched.Set.Expansion is not { } expansion || matched.Set.Temperature is null)
            return;
        errors.Add(
            (
                System.Source("temperature", "temperature of the part", 1 / Math.Sqrt(3), InputShape.Rectangular),
                nominal * (expansion - MatchedReadings.SteelExpansion)
            )
        );
        errors.Add(
            (
                System.Source("expansion", "expansion coefficient", 0.1 * expansion, InputShape.Normal),
                nominal * matched.Warmth
            )
        );
    }

    private void AddScalePrior(string axis)
    {
        double[] c = new double[2 * Axes.Count];
        c[Index(axis)] = 1;
        System.Add(
            0,
            c,
            (
                System.Source(
                    $"scale.{axis}",
                    $"scale assumed in {axis.ToUpperInvariant()}",
                    options.ScalePrior,
                    InputShape.Normal
                ),
                1
            )
        );
    }

    private int FaceSource(Face face)
    {
        double phase = options.PhaseError(face.Nominal);
        double u = Math.Sqrt(options.ModelDeviation * options.ModelDeviation + phase * phase);
        return System.Source($"face.{face.Id}", "deviation of faces from the model", u, InputShape.Normal);
    }
}
