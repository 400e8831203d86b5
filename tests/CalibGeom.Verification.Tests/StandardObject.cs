using System.Globalization;
using CalibGeom.Testing;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Verification.Tests;

/// <summary>The standard object's features and readings of prints of it.</summary>
internal static class StandardObject
{
    internal const string Digest = "0123456789abcdef";
    private static readonly double[] Widths = [8, 11.2, 16];

    internal static FeatureTable Table { get; } = Make(0.05, 0.05);

    /// <summary>Ids of the faces that obey the model.</summary>
    internal static string[] Faces { get; } =
        Table.Where(f => f.Axis is "x" or "y" && f.Unit == "mm").Select(f => f.Id.ToString()).ToArray();

    internal static FeatureTable Make(double clearance1, double clearance2)
    {
        var features = new List<Feature>();
        double[] inside = [5.6, 8 + 2 * clearance1, 11.2 + 2 * clearance2];
        for (int b = 0; b < 3; b++)
            foreach (string axis in new[] { "x", "y" })
            {
                features.Add(
                    new Feature(
                        $"box{b + 1}.outside.{axis}",
                        Widths[b],
                        "mm",
                        axis,
                        "outside jaws across the level band"
                    )
                );
                features.Add(
                    new Feature($"box{b + 1}.inside.{axis}", inside[b], "mm", axis, "inside jaws; rock for the least")
                );
            }
        for (int b = 1; b <= 3; b++)
            features.Add(new Feature($"box{b}.height", 10 + 2 * b, "mm", "z", "outside jaws from rim to foot"));
        features.Add(new Feature("span.x", 40, "mm", "x", "outside jaws across both posts"));
        features.Add(new Feature("span.y", 25, "mm", "y", "outside jaws across both posts"));
        features.Add(new Feature("plinth.thickness", 2.5, "mm", "z", "outside jaws on the pad"));
        features.Add(new Feature("column1.diameter", 0.25, "mm", "", "outside jaws, softly"));
        features.Add(new Feature("column1.stood", 0, "stage", "", "lost, plate, wash or cure"));
        features.Add(new Feature("slots.open", 8, "count", "z", "hold against the light"));
        double[] heights = [0.16, 0.2, 0.25, 0.315, 0.4, 0.5, 0.63, 0.8];
        for (int slot = 0; slot < heights.Length; slot++)
            features.Add(new Feature($"slot{slot + 1}.height", heights[slot], "mm", "z", "feeler gauge"));
        double[] slots = [0.1, 0.16, 0.25, 0.4, 0.5];
        for (int slot = 0; slot < slots.Length; slot++)
            features.Add(new Feature($"squeeze{slot + 1}.height", slots[slot], "mm", "z", "feeler gauge"));
        features.Add(new Feature("squeeze.open", 5, "count", "z", "hold against the light"));
        features.Add(new Feature("joint1.fit", clearance1, "fit", "", "how box 1 sits in box 2"));
        features.Add(new Feature("joint2.fit", clearance2, "fit", "", "how box 2 sits in box 3"));
        return new FeatureTable(features, Digest);
    }

    /// <summary>The true size of a face of a print that grew and scaled alike on both axes.</summary>
    internal static double True(Feature feature, double s, double g) => Print(Table, s, g, s, g).SizeOf(feature);

    /// <summary>Exact readings of some features.</summary>
    internal static ReadingSet Exact(
        double sx,
        double gx,
        double sy,
        double gy,
        IEnumerable<string>? ids = null,
        FeatureTable? table = null
    )
    {
        ReadingSet all = Print(table ?? Table, sx, gx, sy, gy).Read();
        return new ReadingSet(
            (ids ?? Faces).Select(id => all.Readings.Single(r => r.Feature == id)),
            state: all.State,
            material: all.Material
        );
    }

    private static KnownPrint Print(FeatureTable table, double sx, double gx, double sy, double gy) =>
        new(table)
        {
            ScaleX = sx,
            GrowthX = gx,
            ScaleY = sy,
            GrowthY = gy,
            State = PartState.PostCured,
        };

    /// <summary>Readings as CSV, exactly.</summary>
    internal static string Csv(IEnumerable<Reading> readings) =>
        "feature,value\n"
        + string.Join(
            '\n',
            readings.Select(r => string.Create(CultureInfo.InvariantCulture, $"{r.Feature},{r.Value:R}"))
        )
        + "\n";
}
