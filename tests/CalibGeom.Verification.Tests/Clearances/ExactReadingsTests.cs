using CalibGeom.Verification.Clearances;
using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Tests.Uncertainty;
using FsCheck.Xunit;

namespace CalibGeom.Verification.Tests.Clearances;

/// <summary>Readings without any error give back what made them.</summary>
public class ExactReadingsTests
{
    [Property(MaxTest = 60)]
    public void ScaleGrowthAndClearanceComeBack(short a, short b, short c, short d, byte e)
    {
        double sx = a / 5e6,
            gx = b / 4e5,
            sy = c / 5e6,
            gy = d / 4e5,
            design = (e - 100) / 1000.0;
        FeatureTable table = StandardObject.Make(design, 0.05);
        ClearancePrediction p = ClearancePrediction.Of(table, StandardObject.Exact(sx, gx, sy, gy, table: table));
        Near.Absolute(sx, p.Axes[0].Scale.Value, 1e-9);
        Near.Absolute(gx, p.Axes[0].Growth.Value, 1e-9);
        Near.Absolute(sy, p.Axes[1].Scale.Value, 1e-9);
        Near.Absolute(gy, p.Axes[1].Growth.Value, 1e-9);
        Near.Absolute(design * (1 + sx) - 2 * gx, p.Joints[0].Axes[0].Clearance.Value, 1e-9);
        Near.Absolute(0.05 * (1 + sy) - 2 * gy, p.Joints[1].Axes[1].Clearance.Value, 1e-9);
        Near.Absolute(p.Joints[0].Axes[0].Model.Value, p.Joints[0].Axes[0].Direct!.Value, 1e-9);
        Assert.All(p.Residuals, r => Near.Absolute(0, r.Residual, 1e-9));
    }

    [Fact]
    public void OutsideFacesAloneGiveThemBackToo()
    {
        string[] outside = StandardObject.Faces.Where(f => !f.Contains("inside", StringComparison.Ordinal)).ToArray();
        ClearancePrediction p = ClearancePrediction.Of(
            StandardObject.Table,
            StandardObject.Exact(-0.003, 0.02, 0.002, -0.01, outside)
        );
        Near.Absolute(-0.003, p.Axes[0].Scale.Value, 1e-9);
        Near.Absolute(0.05 * 0.997 - 0.04, p.Joints[0].Axes[0].Clearance.Value, 1e-9);
        Near.Absolute(0.05 * 1.002 + 0.02, p.Joints[0].Axes[1].Clearance.Value, 1e-9);
        Assert.Null(p.Joints[0].Axes[0].Direct);
        Assert.Null(p.Joints[0].Axes[0].Agreement);
    }

    [Property(MaxTest = 30)]
    public void OrderSplittingAndUnitsNeverChangeAnAnswer(int seed)
    {
        var random = new Random(seed);
        Reading[] readings = Enumerable
            .Range(0, 40)
            .Select(_ =>
            {
                Feature f = StandardObject.Table.Find(StandardObject.Faces[random.Next(StandardObject.Faces.Length)])!;
                return Reading.Size(f.Id, Math.Round(f.Nominal + 0.03 + 0.02 * random.NextDouble(), 2));
            })
            .ToArray();
        string[] lines = readings.Select(r => FormattableString.Invariant($"{r.Feature},{r.Value},mm")).ToArray();
        string[] metres = readings
            .Select(r => FormattableString.Invariant($"{r.Feature},{Math.Round(r.Value * 1000)},um"))
            .ToArray();
        string[] shuffled = lines.OrderBy(_ => random.Next()).ToArray();
        string Text(IEnumerable<string> rows) => "feature,value,unit\n" + string.Join('\n', rows);
        int cut = random.Next(lines.Length);
        double[] plain = Numbers(ReadingsFile.Parse(Text(lines)));
        Assert.Equal(plain, Numbers(ReadingsFile.Parse(Text(shuffled))));
        Assert.Equal(
            plain,
            Numbers(ReadingSet.Join([ReadingsFile.Parse(Text(lines[cut..])), ReadingsFile.Parse(Text(lines[..cut]))]))
        );
        double[] other = Numbers(ReadingsFile.Parse(Text(metres)));
        for (int i = 0; i < plain.Length; i++)
            Near.Absolute(plain[i], other[i], 1e-12 + 1e-9 * Math.Abs(plain[i]));
    }

    [Fact]
    public void AShrunkPartAtThirtyDegreesIsCorrectedToTwenty()
    {
        const double A = 80e-6,
            Steel = 11.5e-6;
        double warm = 1 + (A - Steel) * 10;
        ReadingSet cold = StandardObject.Exact(0.001, 0.01, 0.001, 0.01);
        var hot = new ReadingSet(
            cold.Readings.Select(r => Reading.Size(r.Feature, r.Value * warm)),
            temperature: 30,
            expansion: A
        );
        ClearancePrediction p = ClearancePrediction.Of(StandardObject.Table, hot);
        Near.Absolute(0.001, p.Axes[0].Scale.Value, 1e-6);
        Near.Absolute(0.01, p.Axes[0].Growth.Value, 1e-6);
        Assert.Contains(p.Joints[0].Axes[0].Budget.Components, c => c.Name == "temperature of the part");
    }

    private static double[] Numbers(ReadingSet set)
    {
        ClearancePrediction p = ClearancePrediction.Of(StandardObject.Table, set);
        return
        [
            .. p.Axes.SelectMany(a => new[] { a.Scale.Value, a.Growth.Value, a.Growth.Expanded }),
            .. p
                .Joints.SelectMany(j => j.Axes)
                .SelectMany(c => new[] { c.Clearance.Value, c.Clearance.Expanded, c.Model.Value }),
            .. p.Joints.Select(j => j.ProbabilityEnters),
        ];
    }
}
