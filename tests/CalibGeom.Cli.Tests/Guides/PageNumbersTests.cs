using System.Globalization;
using System.Text.RegularExpressions;
using CalibGeom.Formats.Stl;
using CalibGeom.Meshes;
using CalibGeom.Plates;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Cli.Tests.Guides;

/// <summary>
/// Numbers of pages that are written anew with what the program says, each worked out another way: from the page's own
/// input with school arithmetic, or from a law of physics, never with the code that printed it.
/// </summary>
public class PageNumbersTests
{
    private const double Dp = 0.12,
        Ec = 4,
        Irradiance = 4,
        Layer = 0.05,
        Sigma = 0.02;

    private static readonly string Predict = Page("worked-example-predict.md"),
        Tune = Page("worked-session-tune.md"),
        Light = Page("light.md"),
        Inspect = Page("inspect.md"),
        Place = Page("place.md");

    /// <summary>Two faces of a joint: half of what the pocket is wider than what goes in, at 20 degrees.</summary>
    [Theory]
    [InlineData("joint 1         X", "box1.outside.x", "box2.inside.x")]
    [InlineData("joint 1         Y", "box1.outside.y", "box2.inside.y")]
    [InlineData("joint 2         X", "box2.outside.x", "box3.inside.x")]
    public void PredictSaysHalfTheDifferenceOfTwoFaces(string row, string peg, string hole)
    {
        double warm = 1 - (80e-6 - 11.5e-6) * 2;
        Near(warm * (Mean(hole) - Mean(peg)) / 2, Numbers(Predict, row)[^5], 0.0005);

        static double Mean(string feature) =>
            Lines(Predict)
                .Where(l => l.StartsWith(feature + ",", StringComparison.Ordinal))
                .Average(l => double.Parse(l.Split(',')[1], CultureInfo.InvariantCulture));
    }

    /// <summary>
    /// A hole drawn D prints as D (1 + s) - 2 g; it must be two clearances wider than the peg printed.
    /// </summary>
    [Theory]
    [InlineData("X", "X hole ")]
    [InlineData("Y", "Y hole ")]
    public void PredictDrawsTheHoleThatPrintsAsWanted(string axis, string said)
    {
        // Of the three rows that begin with the axis, the first is the decomposition and the second your joint.
        double[][] rows =
        [
            .. Lines(Predict)
                .Where(l => l.StartsWith(axis + "  ", StringComparison.Ordinal))
                .Select(l => Numbers(l, axis)),
        ];
        double scale = rows[0][0] / 100,
            growth = rows[0][3],
            peg = rows[1][2];
        Near((peg + 2 * 0.040 + 2 * growth) / (1 + scale), Numbers(Predict, said)[0], 0.0015);
    }

    /// <summary>Six tunnels were open: the light closed the seventh height from above and not the sixth.</summary>
    [Fact]
    public void PredictBracketsPrintThroughBetweenNeighbouringTunnels()
    {
        string table = File.ReadAllText(Path.Combine(Repository.Root, "generated", "standard.features.csv"));
        double[] heights =
        [
            .. Lines(table)
                .Where(l => l.StartsWith("slot", StringComparison.Ordinal) && l.Contains(".height,"))
                .Select(l => double.Parse(l.Split(',')[1], CultureInfo.InvariantCulture))
                .OrderDescending(),
        ];
        double[] said = Numbers(Predict, "print-through: between ");
        Assert.Equal([heights[6], heights[5]], said[..2]);
    }

    /// <summary>So many layers, each exposed and rested so much longer: the base layers keep their time.</summary>
    [Fact]
    public void TuneSaysHowMuchLongerAPartTakes()
    {
        double layers = 60 / Layer,
            more = layers * (1.2 - 0.5) + (layers - 5) * (3.12 - 2.5);
        Near(more / 60, Numbers(Tune, "A part 60 mm tall then takes +")[0], 0.5);
    }

    /// <summary>
    /// An outside is whole pixels wide and so is its pocket; half of the difference is the clearance.
    /// </summary>
    [Fact]
    public void MakeSnapsClearancesToWholePixels()
    {
        TestObjectSpec spec = Presets.Find("fine")!.Spec with
        {
            Process = new ProcessSpec { PixelPitch = 0.02, LayerHeight = 0.025 },
        };
        double outside = Math.Round(6.3 / 0.02),
            inside = Math.Round((6.3 + 2 * 0.035) / 0.02, MidpointRounding.AwayFromZero);
        double clearance = (inside - outside) / 2 * 0.02;
        JointPlan joint = TestObject.Of(spec).Joints[0];
        Near(clearance, joint.Clearance.X, 1e-6);
        Near(clearance, joint.Clearance.Y, 1e-6);
        Near(clearance, Numbers(Page("recipes.md"), "With 0.02 mm pixels the clearance becomes ")[0], 1e-12);
    }

    /// <summary>A cup of 6 x 6 x 5 mm with a pocket of 4 x 4 x 4 mm, in layers of 0.05 mm.</summary>
    [Fact]
    public void InspectKnowsVolumeSurfaceAndPeelOfACup()
    {
        double outer = 6 * 6 * 5,
            pocket = 4 * 4 * 4,
            floor = 6 * 6,
            ring = 6 * 6 - 4 * 4;
        Assert.Equal(
            [28, 1, outer - pocket, 2 * floor + 4 * 6 * 5 + 4 * 4 * 4],
            Numbers(Inspect, "cup.obj: may not print well (0 errors, 1 warning, 0 notes)\n ")[..4]
        );
        double mean = (20 * floor + 80 * ring) / 100.0;
        Near(floor / mean, Numbers(Inspect, "peel force at most ")[0], 0.005);
        Assert.Equal(pocket, Numbers(Inspect, "warning [suction-cup] ")[0]);
    }

    /// <summary>
    /// Dose adds up over layers as a geometric series; light through a roof goes Dp ln(dose / Ec) deep, of which the
    /// roof's first layer is its own; a face stands where its Gaussian blur leaves Ec.
    /// </summary>
    [Fact]
    public void SimulateFollowsTheLawsOfTheWorkingCurve()
    {
        double all = Irradiance * 2.5 / (1 - Math.Exp(-Layer / Dp)),
            through = Dp * Math.Log(all / Ec) - Layer,
            growth = Sigma * Deviate(Ec / all);
        foreach ((string slot, double designed) in new[] { ("slot4.height", 0.315), ("slot7.height", 0.63) })
            Near(designed - through, Row(slot), 0.001);
        Near(8 + 2 * growth, Row("box1.outside.x"), 0.001);
        Near(8.1 - 2 * growth, Row("box2.inside.x"), 0.001);
        Near(40 + 2 * growth, Row("span.x"), 0.001);

        static double Row(string feature) =>
            double.Parse(
                Lines(Light).Single(l => l.StartsWith($"| `{feature}`", StringComparison.Ordinal)).Split('|')[3],
                CultureInfo.InvariantCulture
            );
    }

    /// <summary>
    /// Every triangle of the coupon where the page says it stands, against every triangle of the parts.
    /// </summary>
    [Fact]
    public void PlaceKeepsTheDistanceThatItSays()
    {
        double[] middle = Numbers(Place, "witness: middle at X ");
        TriangleMesh turned = TestObject.Of(Presets.Witness).ToMesh().Transform(Affine3D.TurnZ(90));
        Vector3D at = (turned.Bounds.Min + turned.Bounds.Max) * 0.5;
        TriangleMesh coupon = turned.Transform(
            Affine3D.Shift(new Vector3D(middle[0] - at.X, middle[1] - at.Y, -turned.Bounds.Min.Z))
        );
        double least = double.PositiveInfinity;
        foreach (string part in new[] { "holder.stl", "tray.stl" })
        {
            TriangleMesh mesh = StlReader.Read(Path.Combine(Repository.Root, "docs", "samples", part));
            for (int i = 0; i < coupon.TriangleCount; i++)
            for (int k = 0; k < mesh.TriangleCount; k++)
            {
                (Vector3D a, Vector3D b, Vector3D c) = coupon.Triangle(i);
                (Vector3D p, Vector3D q, Vector3D r) = mesh.Triangle(k);
                if ((a - p).Length - (b - a).Length - (c - a).Length - (q - p).Length - (r - p).Length < 2.1)
                    least = Math.Min(least, TriangleDistance.Squared(a, b, c, p, q, r));
            }
        }
        // The page rounds the place to a micrometre on both axes.
        Near(Math.Sqrt(least), Numbers(Place, "least distance to a part ")[0], 0.0015);
    }

    /// <summary>Times of a ladder have equal ratios.</summary>
    [Fact]
    public void PlaceSpreadsALadderByEqualRatios()
    {
        for (int i = 0; i < 4; i++)
            Near(1.8 * Math.Pow(2.6 / 1.8, i / 3.0), Numbers(Place, $"search A{i + 1}, ")[0], 0.005);
    }

    private static void Near(double expected, double said, double within) =>
        Assert.True(Math.Abs(expected - said) <= within, $"worked out {expected}, said {said}");

    /// <summary>
    /// How many deviations from its middle a normal distribution leaves a share above it; by halving.
    /// </summary>
    private static double Deviate(double share)
    {
        (double low, double high) = (-6, 6);
        for (int i = 0; i < 60; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = Above(middle) > share ? (middle, high) : (low, middle);
        }
        return low;

        // Simpson's rule over the density.
        static double Above(double z)
        {
            const int Steps = 400;
            double step = (9 - z) / Steps,
                sum = 0;
            for (int i = 0; i <= Steps; i++)
                sum +=
                    (
                        i == 0 || i == Steps ? 1
                        : i % 2 == 1 ? 4
                        : 2
                    ) * Math.Exp(-(z + i * step) * (z + i * step) / 2);
            return sum * step / 3 / Math.Sqrt(2 * Math.PI);
        }
    }

    private static string Page(string name) =>
        File.ReadAllText(Path.Combine(Repository.Root, "docs", name)).ReplaceLineEndings("\n");

    private static string[] Lines(string page) => page.ReplaceLineEndings("\n").Split('\n');

    /// <summary>The numbers of a line behind some words on a page that stand there first.</summary>
    private static double[] Numbers(string page, string behind)
    {
        int at = page.IndexOf(behind, StringComparison.Ordinal);
        Assert.True(at >= 0, behind);
        string rest = page[(at + behind.Length)..].Split('\n')[0];
        return
        [
            .. Regex
                .Matches(rest, @"(?<![\w.])[-+]?\d+(\.\d+)?")
                .Select(m => double.Parse(m.Value, CultureInfo.InvariantCulture)),
        ];
    }
}
