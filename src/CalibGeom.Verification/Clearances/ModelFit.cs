using System.Globalization;

namespace CalibGeom.Verification.Clearances;

/// <summary>
/// Scale and growth of each axis that has readings, fitted together over one print or several: axes and prints share
/// the biases of jaws. <see cref="ModelRows"/> says what a reading consists of.
/// </summary>
internal sealed class ModelFit
{
    private readonly FitSettings settings;
    private readonly ModelRows rows;
    private readonly Dictionary<string, List<int>> rowsOf = new(StringComparer.Ordinal);
    private readonly List<ModelFace> faces = [];

    private ModelFit(
        IReadOnlyList<MatchedReadings> prints,
        PredictionOptions options,
        FitSettings settings,
        CancellationToken cancellation
    )
    {
        Prints = prints;
        this.settings = settings;
        ModelFace[] all = prints.SelectMany((p, n) => FacesOf(p, n)).ToArray();
        string[] axes = all.Select(f => f.Face.Axis).Distinct().Order(StringComparer.Ordinal).ToArray();
        Axes = axes;
        System = new LinearSystem(2 * axes.Length);
        Scatter = RepeatScatter.Of(prints, options);
        rows = new ModelRows(System, options, settings, Scatter, axes);
        foreach (ModelFace f in all.Where(f => !settings.Aside.Contains(f.Group)))
            AddFace(f);
        for (int n = 0; n < prints.Count; n++)
            foreach (ReadingGroup group in prints[n].References)
                rows.AddReference(group, n);
        foreach (string axis in axes.Where(settings.Assumed.Contains))
            rows.AddScalePrior(axis);
        System.Solve(cancellation);
    }

    internal LinearSystem System { get; }

    internal IReadOnlyList<MatchedReadings> Prints { get; }

    internal IReadOnlyList<string> Axes { get; }

    /// <summary>The faces that count, in the order of the system's first rows.</summary>
    internal IReadOnlyList<ModelFace> Faces => faces;

    internal Dictionary<string, RepeatScatter> Scatter { get; }

    internal FitSettings Settings => settings;

    internal bool Several => Prints.Count > 1;

    /// <summary>
    /// Fits; where readings leave scale less certain than it is among prints anyway, that knowledge is used.
    /// </summary>
    internal static ModelFit Of(
        IReadOnlyList<MatchedReadings> prints,
        PredictionOptions options,
        FitSettings? wanted = null,
        CancellationToken cancellation = default
    )
    {
        FitSettings start = wanted ?? new FitSettings(options.FormError, PrintVariation.Assumed(options, prints.Count));
        string[] assumed = prints
            .SelectMany((p, n) => FacesOf(p, n))
            .Where(f => !start.Aside.Contains(f.Group))
            .Select(f => f.Face)
            .GroupBy(f => f.Axis)
            .Where(g => g.Select(f => (f.Nominal, f.Inside)).Distinct().Count() < 2)
            .Select(g => g.Key)
            .ToArray();
        var fit = new ModelFit(prints, options, start with { Assumed = assumed }, cancellation);
        string[] vague = fit
            .Axes.Where(a =>
                !assumed.Contains(a) && fit.System.CoefficientUncertainty(fit.Index(a)) > options.ScalePrior
            )
            .ToArray();
        return vague.Length == 0
            ? fit
            : new ModelFit(prints, options, start with { Assumed = [.. assumed, .. vague] }, cancellation);
    }

    internal bool ScaleAssumed(string axis) => settings.Assumed.Contains(axis);

    internal int Index(string axis) => rows.Index(axis);

    internal LinearTarget Scale(string axis) => Single(Index(axis), []);

    /// <summary>Growth of the print that was read, of the mean print, or of the next one.</summary>
    internal LinearTarget Growth(string axis, PrintTarget print = PrintTarget.Read) =>
        Single(Index(axis) + 1, Shift(axis, print, 1));

    /// <summary>What burrs add to boxes, as far as the readings tell.</summary>
    internal LinearTarget Burr() => new(0, new double[2 * Axes.Count], [(rows.BurrSource(), 1)]);

    /// <summary>The clearance between two faces: half of pocket less peg.</summary>
    internal LinearTarget Clearance(Face peg, Face pocket, PrintTarget print = PrintTarget.Read)
    {
        double[] c = new double[2 * Axes.Count];
        double design = (pocket.Nominal - peg.Nominal) / 2;
        c[Index(peg.Axis)] = design;
        c[Index(peg.Axis) + 1] = -2;
        return new LinearTarget(
            design,
            c,
            [(rows.FaceSource(pocket), 0.5), (rows.FaceSource(peg), -0.5), .. Shift(peg.Axis, print, -2)]
        );
    }

    /// <summary>The size between two faces.</summary>
    internal LinearTarget Size(Face face, PrintTarget print = PrintTarget.Read)
    {
        double[] c = new double[2 * Axes.Count];
        c[Index(face.Axis)] = face.Nominal;
        c[Index(face.Axis) + 1] = 2 * face.Sign;
        return new LinearTarget(
            face.Nominal,
            c,
            [(rows.FaceSource(face), 1), .. Shift(face.Axis, print, 2 * face.Sign)]
        );
    }

    /// <summary>The clearance of one of the prints that were read.</summary>
    internal LinearTarget ClearanceOf(int print, Face peg, Face pocket)
    {
        LinearTarget mean = Clearance(peg, pocket);
        return Several
            ? mean with
            {
                Realised = [.. mean.Realised, .. rows.PrintSources(Number(print), peg.Axis, -2)],
            }
            : mean;
    }

    private static string Number(int print) => print.ToString(CultureInfo.InvariantCulture);

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

    /// <summary>
    /// With one print, the coefficients are of that print: it differs from the mean, and the next one differs again.
    /// </summary>
    private (int Source, double Factor)[] Shift(string axis, PrintTarget print, double factor)
    {
        if (print == PrintTarget.Read || (Several && print == PrintTarget.Mean))
            return [];
        (int, double)[] read = Several ? [] : rows.PrintSources("read", axis, -factor);
        return print == PrintTarget.Mean ? read : [.. read, .. rows.PrintSources("next", axis, factor)];
    }

    private static IEnumerable<ModelFace> FacesOf(MatchedReadings print, int number) =>
        print
            .Sizes.Select(g => (Group: g, Face: print.Features.TryGetValue(g.Id, out Feature? f) ? Face.Of(f) : null))
            .Where(p => p.Face is not null)
            .Select(p => new ModelFace(number, p.Group, p.Face!));

    private void AddFace(ModelFace f)
    {
        if (!rowsOf.TryGetValue(f.Face.Id, out List<int>? list))
            rowsOf[f.Face.Id] = list = [];
        list.Add(System.RowCount);
        faces.Add(f);
        rows.AddFace(Prints[f.Print], f.Print, Several, f.Group, f.Face);
    }

    private double Weight(int row, List<int> among) =>
        (double)faces[row].Group.Count / among.Sum(r => faces[r].Group.Count);

    private LinearTarget Single(int index, IReadOnlyList<(int Source, double Factor)> realised)
    {
        double[] c = new double[2 * Axes.Count];
        c[index] = 1;
        return new LinearTarget(0, c, realised);
    }
}
