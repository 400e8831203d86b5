using System.Globalization;
using System.Text;

namespace CalibGeom.Cli.Tests;

/// <summary>
/// Odd command lines with their exit code and message, as a table that a person can read: Goldens/odd-lines.txt.
/// <c>CALIBGEOM_UPDATE=1</c> rewrites it from its own command lines.
/// </summary>
[Collection(CurrentDirectory.Name)]
public class OddLineTests
{
    private const string Golden = "tests/CalibGeom.Cli.Tests/Goldens/odd-lines.txt";

    [Theory]
    [InlineData("")]
    [InlineData("de-DE")]
    [InlineData("tr-TR")]
    public void EachLineEndsAsTheTableSays(string culture)
    {
        string path = Path.Combine(Repository.Root, Golden);
        string expected = File.ReadAllText(path).ReplaceLineEndings("\n");
        string[] lines = expected.Split('\n').Where(l => l.StartsWith("$ ", StringComparison.Ordinal)).ToArray();
        Assert.True(lines.Length >= 60);
        string actual = InFolder(culture, () => string.Concat(lines.Select(l => l + "\n" + Answer(l[2..]) + "\n")));
        if (Repository.Updating && culture.Length == 0)
            File.WriteAllText(path, actual);
        else
            Assert.Equal(expected, actual);
    }

    private static string Answer(string line)
    {
        string[] args = line.Split(' ', StringSplitOptions.RemoveEmptyEntries)[1..];
        CliRun run = CliRun.With("feature,value\nbox1.outside.x,8.02\n"u8.ToArray(), args);
        string here = Directory.GetCurrentDirectory();
        var text = new StringBuilder($"  exit {run.ExitCode}\n");
        foreach ((string name, string said) in new[] { ("out", run.Out), ("err", run.Error) })
        foreach (string part in said.Replace(here, "HERE", StringComparison.Ordinal).Split('\n').Take(12))
            if (part.TrimEnd().Length > 0)
                text.Append("  ").Append(name).Append("  ").Append(part.TrimEnd()).Append('\n');
        return text.ToString();
    }

    private static string InFolder(string culture, Func<string> work)
    {
        using var folder = new TemporaryFolder();
        Prepare(folder);
        string before = Directory.GetCurrentDirectory();
        (CultureInfo old, CultureInfo oldUi) = (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture);
        try
        {
            Directory.SetCurrentDirectory(folder.Root);
            CultureInfo.CurrentCulture = CultureInfo.CurrentUICulture = CultureInfo.GetCultureInfo(culture);
            return work();
        }
        finally
        {
            Directory.SetCurrentDirectory(before);
            (CultureInfo.CurrentCulture, CultureInfo.CurrentUICulture) = (old, oldUi);
        }
    }

    private static void Prepare(TemporaryFolder folder)
    {
        DemoParts.WriteBlock(folder["block.stl"], 0, 0, 20, 20);
        folder.Write("cut.stl", "solid cut\nfacet normal 0 0 1\n");
        folder.Write("empty.csv", "");
        folder.Write("bench.csv", "feature,value\nbox1.outside.x,8.02\nbox2.inside.x,8.07\n");
        folder.Write("wrong.csv", "feature,value\nbox1.outside.x,8.0.2\nslots.open,many\njoint1.fit,snug\n");
        folder.Write("alien.csv", "# digest 0123456789abcdef\nfeature,value\nbox1.outside.x,8.02\n");
        folder.Write("table.csv", "feature,nominal,unit,axis,how\nbox1.outside.x,8,mm,x,\n");
        folder.Write("spec.json", "{\"columns\": {\"heigth\": 5}}");
        folder.Write(
            "log.jsonl",
            "{\"time\":2.5,\"rest\":1,\"layer\":0.05,\"resin\":\"Demo grey\",\"readings\":{\"box1.outside.x\":[8.02]}}\n"
        );
        folder.Write("bad.jsonl", "{\"time\":0,\"layer\":0.05}\n");
        folder.Write("torn.jsonl", "{\"time\":2.5,\"rest\":1,\"layer\":0.05}\n{\"time\":2.");
        folder.Write("values.txt", "--object");
    }
}
