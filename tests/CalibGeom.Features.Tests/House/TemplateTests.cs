using System.Xml.Linq;

namespace CalibGeom.Features.Tests.House;

/// <summary>
/// Nothing here compiles what <c>dotnet new</c> makes, so the versions that it names are held against ours;
/// tests/peers/run-packages makes, builds and tests it.
/// </summary>
public class TemplateTests
{
    private static readonly string OurVersion = XDocument
        .Load(Path.Combine(Repository.Root, "Directory.Build.props"))
        .Descendants("Version")
        .Single()
        .Value;

    private static readonly Dictionary<string, string> Others = XDocument
        .Load(Path.Combine(Repository.Root, "Directory.Packages.props"))
        .Descendants("PackageVersion")
        .ToDictionary(
            v => (string)v.Attribute("Include")!,
            v => (string)v.Attribute("Version")!,
            StringComparer.Ordinal
        );

    [Fact]
    public void TheyNameThePackagesThatAreMadeAndTestedHere()
    {
        (string Id, string Version)[] named =
        [
            .. SourceFile
                .Under("templates", "*.csproj")
                .SelectMany(p => XDocument.Parse(p.Text).Descendants("PackageReference"))
                .Select(r => ((string)r.Attribute("Include")!, (string)r.Attribute("Version")!)),
        ];
        Assert.Contains(named, n => n.Id == "CalibGeom");
        Assert.Contains(named, n => n.Id == "CalibGeom.Testing");
        Assert.All(
            named,
            n =>
                Assert.Equal(
                    n.Id.StartsWith("CalibGeom", StringComparison.Ordinal) ? OurVersion : Others[n.Id],
                    n.Version
                )
        );
    }
}
