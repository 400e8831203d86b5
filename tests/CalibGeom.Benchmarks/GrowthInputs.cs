using System.Text;
using CalibGeom.Meshes;
using CalibGeom.Objects;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Benchmarks;

/// <summary>Inputs of any size, each much like what people have.</summary>
internal static class GrowthInputs
{
    internal static string Ascii(int triangles) =>
        "solid a\n"
        + Lines(
            triangles,
            i => $"facet normal 0 0 0\nouter loop\nvertex {i} 0 0\nvertex {i} 1 0\nvertex {i} 0 1\nendloop\nendfacet\n"
        )
        + "endsolid a\n";

    /// <summary>Many objects, each of which uses the first and the last vertex of the file.</summary>
    internal static string ObjectsOverAll(int count) =>
        Lines(count + 2, i => $"v {i} 0 0\nv {i} 1 {i % 7}\n") + Lines(count, i => $"o part{i}\nf 1 -1 {2 * i + 3}\n");

    internal static string Spec(int comments) => Remarks(comments, "// ") + SpecJson.ToText(Presets.Witness);

    internal static string ObjectFile(int lines) =>
        new string('\n', 40 * lines) + ObjectFileJson.ToText(new ObjectFile("witness", Presets.Witness));

    internal static string FeatureRows(int rows, int remarks) =>
        Remarks(remarks, "# ")
        + "feature,nominal,unit,axis,how\n"
        + Lines(rows, i => $"box{i + 1}.outside.x,{8 + i},mm,x,outside jaws\n");

    internal static string Readings(int repeats) =>
        "# state dry\n# material rigid\n# instrument cal resolution=0.01 mpe=0.02\nfeature,value,unit,instrument,note\n"
        + Lines(repeats, i => $"box1.outside.x,8.0{i % 5},mm,cal,\nbox2.inside.x,8.{10 + i % 5},mm,cal,\n");

    internal static string JsonReadings(int count) =>
        "{\"state\":\"dry\",\"material\":\"rigid\",\"readings\":["
        + string.Join(
            ",\n",
            Enumerable.Range(0, count).Select(i => $"{{\"feature\":\"box1.outside.x\",\"value\":8.0{i % 5}}}")
        )
        + "]}";

    internal static string Instruments(int count) =>
        "# state dry\n# material rigid\n"
        + Lines(count, i => $"# instrument cal{i} resolution=0.01 mpe=0.02\n")
        + "feature,value,unit,instrument,note\n"
        + Lines(count, i => $"box1.outside.x,8.0{i % 5},mm,cal{i},\nbox2.inside.x,8.1{i % 5},mm,cal{i},\n");

    internal static string Coupons(int count) =>
        "# state dry\n# material rigid\n# instrument cal resolution=0.01 mpe=0.02\nfeature,value,unit,instrument,note\n"
        + Lines(count, i => $"A{i + 1}/box1.outside.x,8.0{i % 5},mm,cal,\nA{i + 1}/box2.inside.x,8.1{i % 5},mm,cal,\n");

    internal static string Caliper(int rows) =>
        "# caliper cal\n# valid 365\ndate,jaw,gauge,reading,part,person\n"
        + Lines(rows, i => $"2026-11-02,outside,10,10.0{i % 3},,\n");

    /// <summary>Prints at exposures up and down, one a day.</summary>
    internal static string Log(int prints) =>
        Lines(
            prints,
            i =>
                Print(
                    new DateOnly(2020, 1, 1).AddDays(i),
                    2 + 0.1 * (i % 8),
                    0.01 + 0.004 * (i % 8) + 0.0003 * (i * 7 % 5),
                    ""
                )
        );

    /// <summary>One print of many coupons.</summary>
    internal static string Plate(int coupons)
    {
        int side = (int)Math.Ceiling(Math.Sqrt(coupons));
        return Lines(
            coupons,
            i =>
                Print(
                    new DateOnly(2026, 3, 2),
                    2.5,
                    0.01 + 0.0002 * (i % side) + 0.0003 * (i * 7 % 5),
                    $"\"place\":{{\"label\":\"A{i + 1}\",\"x\":{-60 + 120.0 * (i % side) / side},\"y\":{-35 + 70.0 * (i / side) / side},\"turn\":0}},"
                )
        );
    }

    /// <summary>Two cones on one ring, most of whose triangles meet in two tips.</summary>
    internal static TriangleMesh DoubleCone(int triangles)
    {
        int steps = triangles / 2;
        var corners = new double[3 * (steps + 2)];
        corners[3 * steps + 2] = 10;
        corners[3 * steps + 5] = -10;
        var numbers = new int[6 * steps];
        for (int i = 0; i < steps; i++)
        {
            (corners[3 * i + 1], corners[3 * i]) = Math.SinCos(2 * Math.PI * i / steps);
            (corners[3 * i], corners[3 * i + 1]) = (20 * corners[3 * i], 20 * corners[3 * i + 1]);
            int next = (i + 1) % steps;
            ((int[])[i, next, steps, next, i, steps + 1]).CopyTo(numbers, 6 * i);
        }
        return new TriangleMesh(corners, numbers);
    }

    internal static TriangleMesh Equal(int triangles) =>
        new([0, 0, 0, 30, 0, 0, 0, 30, 0], [.. Enumerable.Range(0, 3 * triangles).Select(i => i % 3)]);

    private static string Print(DateOnly day, double time, double growth, string place) =>
        FormattableString
            .Invariant(
                $$$"""
                {"date":"{{{day:yyyy-MM-dd}}}","digest":"0123456789abcdef",{{{place}}}"time":{{{time}}},"rest":1,"edgeOffset":0,
                "layer":0.05,"baseLayers":5,"baseTime":25,"lift":7,"resin":"Demo grey","printer":"bench","state":"dry",
                "greyLevels":false,"orientation":0,"instrument":"cal","joints":[],"columns":[],"readings":{},
                "growthX":{"value":{{{growth:0.####}}},"uncertainty":0.0025,"bias":0.0115},
                "growthY":{"value":{{{growth:0.####}}},"uncertainty":0.0025,"bias":0.0115},
                "slots":{"heights":[0.16,0.2,0.25,0.315,0.4,0.5,0.63,0.8],"open":5}}
                """
            )
            .ReplaceLineEndings("") + "\n";

    private static string Remarks(int count, string mark) =>
        Lines(count, i => $"{mark}remark {i} of someone who has much to say about it\n");

    private static string Lines(int count, Func<int, FormattableString> line)
    {
        var text = new StringBuilder();
        for (int i = 0; i < count; i++)
            text.Append(FormattableString.Invariant(line(i)));
        return text.ToString();
    }

    private static string Lines(int count, Func<int, string> line)
    {
        var text = new StringBuilder();
        for (int i = 0; i < count; i++)
            text.Append(line(i));
        return text.ToString();
    }
}
