using System.Text;
using System.Text.RegularExpressions;
using CalibGeom.Pictures.BenchSheet;
using CalibGeom.Pictures.Drawings;
using CalibGeom.Pictures.Objects;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Pictures.Tests.BenchSheet;

public partial class BenchSheetPageTests
{
    private const string Hostile = "</script><img src=x onerror=\"alert('1')\">&\u202E=1+1";

    public static TheoryData<string> PresetNames => [.. Presets.All.Select(p => p.Name)];

    [Theory]
    [MemberData(nameof(PresetNames))]
    public void EveryFeatureHasItsFieldsAndNothingIsFetched(string name)
    {
        TestObject made = TestObject.Of(Presets.Find(name)!.Spec);
        string html = BenchSheetPage.ToHtml(made, name);
        Assert.InRange(Encoding.UTF8.GetByteCount(html), 10_000, 1_500_000);
        Assert.DoesNotMatch(Address(), html);
        foreach (Feature feature in made.Features)
            Assert.Contains(
                feature.Unit == "stage" ? $"data-cell=\"{feature.Id}\"" : $"data-feature=\"{feature.Id}\"",
                html,
                StringComparison.Ordinal
            );
        foreach (string sentence in SafetyText.Sentences)
            Assert.Contains(sentence.Replace("'", "&#39;", StringComparison.Ordinal), html, StringComparison.Ordinal);
        Assert.Equal(html, BenchSheetPage.ToHtml(made, name));
        // Lifted from the far side the plinth would pull at the tab.
        Assert.Equal(
            made.Features.Find(KnownFeatures.SqueezeOpen) is not null,
            html.Contains("scraper in on the squeeze tab", StringComparison.Ordinal)
        );
    }

    [Fact]
    public void NamesStayText()
    {
        TestObject made = TestObject.Of(Presets.Witness);
        string html = BenchSheetPage.ToHtml(made, Hostile);
        Assert.DoesNotContain("<img", html, StringComparison.Ordinal);
        Assert.Contains("<bdi>&lt;/script&gt;&lt;img src=x", html, StringComparison.Ordinal);
        // One end of the data and one of the script, none from the name.
        Assert.Equal(2, Regex.Count(html, "</script>"));
    }

    [Fact]
    public void NamesStayTextInDrawings()
    {
        TestObject made = TestObject.Of(Presets.Witness);
        foreach (
            Drawing drawing in new[]
            {
                ObjectDrawing.Draw(made, Hostile + "\u0001", null, false),
                NumberedView.Draw(made, Hostile + "\u0001"),
            }
        )
        {
            using var stream = new MemoryStream();
            drawing.WriteSvg(stream);
            stream.Position = 0;
            var root = System.Xml.Linq.XDocument.Load(stream).Root!;
            Assert.DoesNotContain(root.Descendants(), e => e.Name.LocalName is "img" or "script");
            Assert.Contains(root.Descendants(), e => e.Value.Contains(Hostile, StringComparison.Ordinal));
        }
    }

    [GeneratedRegex(@"https?://|src=""|@import|(?<![A-Za-z])url\(", RegexOptions.IgnoreCase)]
    private static partial Regex Address();
}
