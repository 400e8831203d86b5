using System.Globalization;
using System.Text;

namespace CalibGeom.Verification.Tests.Words;

/// <summary>
/// All that is said of a bench's ordinary stories, word for word, for a person to read over. What the numbers in it
/// must be is asked elsewhere.
/// </summary>
public class SaidWordsTests
{
    [Fact]
    public void OfPrintsOverTime() => Require("trend", TrendStories.All);

    [Fact]
    public void OfAPlate() => Require("map", MapStories.All);

    [Fact]
    public void OfTheNextSettings() => Require("tune", TuneStories.All);

    [Fact]
    public void OfClearancesToExpect() => Require("predict", PredictStories.All);

    private static void Require(string name, IEnumerable<Story> stories)
    {
        var said = new StringBuilder();
        foreach (Story story in stories)
        {
            said.Append(CultureInfo.InvariantCulture, $"== {story.Name}\n");
            foreach (Finding f in story.Findings)
            {
                said.Append(CultureInfo.InvariantCulture, $"{f.Rule} {f.Subject} {f.Severity}\n    {f.Message}\n");
                if (f.Remedy.Length > 0)
                    said.Append(CultureInfo.InvariantCulture, $"    > {f.Remedy}\n");
                if (f.Value is not null || f.Limit is not null)
                    said.Append(CultureInfo.InvariantCulture, $"    {f.Value:0.####} / {f.Limit:0.####} {f.Unit}\n");
            }
            said.Append('\n');
        }
        RepositoryFile.RequireHolds(
            $"tests/CalibGeom.Verification.Tests/Words/{name}.txt",
            Encoding.UTF8.GetBytes(said.ToString())
        );
    }
}
