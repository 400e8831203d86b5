using System.Globalization;
using System.Text.RegularExpressions;
using CalibGeom.Pictures.Objects;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;
using CalibGeom.Tests.TestObjects;
using FsCheck.Fluent;

namespace CalibGeom.Pictures.Tests.Objects;

public partial class ObjectDrawingTests
{
    public static TheoryData<string> PresetNames => [.. Presets.All.Select(p => p.Name)];

    [Theory]
    [MemberData(nameof(PresetNames))]
    public void PresetsAreDrawnWithAllTheirSizesAndNothingOverAnother(string name)
    {
        TestObject made = TestObject.Of(Presets.Find(name)!.Spec);
        foreach (Paper paper in new[] { Paper.A4, Paper.Letter })
        {
            var svg = new SvgSheet(ObjectDrawing.Draw(made, name, paper));
            Assert.Equal("", Fault(svg, made));
            Assert.Equal(paper.Width, SvgSheet.Number(svg.Root.Attribute("width")!.Value) * 25.4 / 96, 2);
            Assert.Equal(paper.Height, SvgSheet.Number(svg.Root.Attribute("height")!.Value) * 25.4 / 96, 2);
            Assert.Contains(svg.Lines, l => l.Role == "leader");
            Assert.DoesNotContain(svg.Texts, t => t.Text.StartsWith("Also: ", StringComparison.Ordinal));
        }
    }

    /// <summary>How many random objects are drawn; the whole form is CALIBGEOM_DRAWINGS=100.</summary>
    private static readonly int Drawings = int.TryParse(
        Environment.GetEnvironmentVariable("CALIBGEOM_DRAWINGS"),
        NumberStyles.None,
        CultureInfo.InvariantCulture,
        out int drawings
    )
        ? drawings
        : 15;

    [Fact]
    public void RandomObjectsAreDrawnWithNothingOverAnother()
    {
        int drawn = 0;
        foreach (TestObjectSpec spec in PrintableSpecs.Any.Sample(4 * Drawings, 20))
        {
            if (drawn == Drawings)
                break;
            TestObject made = TestObject.Of(spec);
            if (made.Solid is null)
                continue;
            drawn++;
            var svg = new SvgSheet(ObjectDrawing.Draw(made, "any", drawn % 2 == 0 ? Paper.A4 : Paper.Letter, false));
            Assert.True(Fault(svg, made) is "", $"{Fault(svg, made)}\n{SpecJson.ToText(spec)}");
        }
        Assert.Equal(Drawings, drawn);
    }

    /// <summary>The first thing wrong with a sheet, or nothing.</summary>
    private static string Fault(SvgSheet svg, TestObject made)
    {
        for (int i = 0; i < svg.Texts.Count; i++)
        for (int j = 0; j < i; j++)
            if (svg.Texts[i].Room.Overlaps(svg.Texts[j].Room))
                return $"\"{svg.Texts[i].Text}\" overlaps \"{svg.Texts[j].Text}\"";
        foreach ((string role, var a, var b) in svg.Lines)
        foreach ((string text, _, Room room) in svg.Texts)
            if (room.IsCrossed(a, b))
                return $"a {role} crosses \"{text}\"";
        string rest = svg.Texts.FirstOrDefault(t => t.Text.StartsWith("Also: ", StringComparison.Ordinal)).Text ?? "";
        foreach (Feature feature in made.Features.Where(f => f.Unit is "mm" or "fit"))
            if (Said(svg, $"{feature.Id}", feature, rest) is { } fault)
                return fault;
        return "";
    }

    /// <summary>
    /// Every text that tells a feature's size tells the designed one, to half its last digit and half a step of the
    /// grid.
    /// </summary>
    private static string? Said(SvgSheet svg, string id, Feature feature, string rest)
    {
        string[] texts = [.. svg.Texts.Where(t => t.Feature == id).Select(t => t.Text)];
        foreach (string text in texts)
        {
            string numbers = text.StartsWith("joint", StringComparison.Ordinal)
                ? text[(text.IndexOf(':') + 1)..]
                : text;
            if (
                !Number()
                    .Matches(numbers)
                    .Any(m =>
                        Math.Abs(double.Parse(m.Value, CultureInfo.InvariantCulture) - feature.Nominal)
                        <= 0.0005 + 0.000062
                    )
            )
                return $"{id} is {feature.Nominal}, drawn as \"{text}\"";
        }
        bool needed = !id.StartsWith("squeeze", StringComparison.Ordinal);
        return texts.Length > 0 || !needed || rest.Contains(id, StringComparison.Ordinal) ? null : $"{id} is not drawn";
    }

    [GeneratedRegex(@"-?\d+(\.\d+)?")]
    private static partial Regex Number();
}
