using System.Globalization;
using System.Text.RegularExpressions;
using CalibGeom.Verification.Clearances;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Verification.Tests.Docs;

/// <summary>Numbers that docs/measuring.md gives.</summary>
public class MeasuringPageTests
{
    [Fact]
    public void IntervalsAreAsMuchWiderAsThePageSaysWhereNobodySaysTheMaterial()
    {
        string page = File.ReadAllText(Path.Combine(Repository.Root, "docs", "measuring.md"));
        Match said = Regex.Match(page, @"clearance is then ([0-9.]+) times as wide, and ([0-9.]+) times where gauges");
        Assert.True(said.Success);
        Assert.Equal(Number(said.Groups[1]), Width(null, false) / Width(Material.Rigid, false), 0.05);
        Assert.Equal(Number(said.Groups[2]), Width(null, true) / Width(Material.Rigid, true), 0.05);
    }

    private static double Number(Group group) => double.Parse(group.Value, CultureInfo.InvariantCulture);

    /// <summary>The 95 % interval of joint 1's clearance along X, all faces read three times.</summary>
    private static double Width(Material? material, bool gauges)
    {
        var readings = new List<Reading>();
        for (int round = 0; round < 3; round++)
        {
            foreach (Feature f in StandardObject.Faces.Select(id => StandardObject.Table.Find(id)!))
                readings.Add(Reading.Size(f.Id, StandardObject.True(f, 0, 0.01) + (round == 1 ? 0.01 : 0), "cal"));
            if (gauges)
                foreach ((string gauge, double size) in new[] { ("outside.10", 10.0), ("inside.8", 8.0) })
                    readings.Add(Reading.Size($"reference.{gauge}", size, "cal"));
        }
        var set = new ReadingSet(
            readings,
            [Instrument.WithPermissibleError("cal", 0.02)],
            temperature: 20,
            state: PartState.Dry,
            material: material
        );
        return ClearancePrediction.Of(StandardObject.Table, set).Joints[0].Axes[0].Clearance.Interval.Width;
    }
}
