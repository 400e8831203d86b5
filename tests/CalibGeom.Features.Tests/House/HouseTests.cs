using System.Text.RegularExpressions;

namespace CalibGeom.Features.Tests.House;

/// <summary>The layout that DEVELOPERS.md describes, held by the sources themselves.</summary>
public partial class HouseTests
{
    private static readonly IReadOnlyList<SourceFile> Sources = SourceFile.Under("src");

    /// <summary>What each project may refer to: projects first, then packages.</summary>
    private static readonly Dictionary<string, string[]> References = new(StringComparer.Ordinal)
    {
        ["CalibGeom.Features"] = [],
        ["CalibGeom"] = ["CalibGeom.Features", "System.IO.Hashing"],
        ["CalibGeom.Verification"] = ["CalibGeom.Features", "MathNet.Numerics"],
        ["CalibGeom.Light"] = ["CalibGeom", "CalibGeom.Verification"],
        ["CalibGeom.Testing"] = ["CalibGeom.Light"],
        ["CalibGeom.Pictures"] =
        [
            "CalibGeom",
            "CalibGeom.Verification",
            "CalibGeom.Light",
            "SkiaSharp",
            "SkiaSharp.NativeAssets.Linux.NoDependencies",
        ],
        ["CalibGeom.Cli"] =
        [
            "CalibGeom",
            "CalibGeom.Verification",
            "CalibGeom.Light",
            "CalibGeom.Pictures",
            "Spectre.Console",
            "System.CommandLine",
        ],
    };

    /// <summary>Rooms from the ground up: one may use what stands before it, and its own inner rooms.</summary>
    private static readonly string[][] Storeys =
    [
        ["CalibGeom.Features"],
        ["CalibGeom.Planar"],
        ["CalibGeom.Meshes"],
        ["CalibGeom.Slicing"],
        ["CalibGeom.Solids"],
        ["CalibGeom.Formats"],
        ["CalibGeom.Plates"],
        ["CalibGeom.Inspection"],
        ["CalibGeom.TestObjects"],
        ["CalibGeom.Objects"],
        ["CalibGeom.Verification.Uncertainty"],
        ["CalibGeom.Verification.Readings", "CalibGeom.Verification.Decisions"],
        ["CalibGeom.Verification.Clearances"],
        ["CalibGeom.Verification.Calipers"],
        ["CalibGeom.Verification.Logs"],
        ["CalibGeom.Verification.Trends"],
        ["CalibGeom.Verification.Maps"],
        ["CalibGeom.Verification.Tuning"],
        ["CalibGeom.Light"],
        ["CalibGeom.Testing", "CalibGeom.Pictures"],
        ["CalibGeom.Cli"],
    ];

    [Fact]
    public void ProjectsReferToWhatTheHouseAllows()
    {
        IReadOnlyList<SourceFile> projects = SourceFile.Under("src", "*.csproj");
        Assert.Equal(
            References.Keys.Order(StringComparer.Ordinal),
            projects.Select(p => p.Folder).Order(StringComparer.Ordinal)
        );
        Assert.All(
            projects,
            p =>
                Assert.Empty(
                    ReferenceLine().Matches(p.Text).Select(m => m.Groups[1].Value).Except(References[p.Folder])
                )
        );
    }

    [Fact]
    public void OnlyTestsSeeWhatIsInternal() =>
        Assert.DoesNotContain(
            SourceFile
                .Under("src", "*.csproj")
                .SelectMany(p => FriendLine().Matches(p.Text).Select(m => m.Groups[1].Value)),
            f =>
                !f.EndsWith(".Tests", StringComparison.Ordinal) && f is not ("CalibGeom.Benchmarks" or "CalibGeom.Fuzz")
        );

    [Fact]
    public void AFolderIsANamespace() =>
        Assert.Empty(
            Sources
                .Where(s => s.Path != "CalibGeom.Cli/Program.cs" && s.Namespace != s.Folder)
                .Select(s => $"{s.Path} says {s.Namespace}")
        );

    [Fact]
    public void RoomsUseOnlyWhatStandsBeneathThem() =>
        Assert.Empty(
            from source in Sources
            from used in source.Usings
            let own = Storey(source.Folder)
            let other = Storey(used)
            where other > own || (other == own && Room(used) != Room(source.Folder))
            select $"{source.Path} uses {used}"
        );

    [Fact]
    public void VerificationKnowsNoGeometry() =>
        Assert.DoesNotContain(
            Sources
                .Where(s => s.Path.StartsWith("CalibGeom.Verification/", StringComparison.Ordinal))
                .SelectMany(s => s.Usings),
            used => !IsIn(used, "CalibGeom.Verification") && !IsIn(used, "CalibGeom.Features")
        );

    [Fact]
    public void LibrariesNameNoOptionOfTheCommandLine() =>
        Assert.Empty(
            from source in Sources
            where !source.Path.StartsWith("CalibGeom.Cli/", StringComparison.Ordinal)
            from line in source.Lines
            where !line.TrimStart().StartsWith("//", StringComparison.Ordinal) && OptionInString().IsMatch(line)
            select $"{source.Path}: {line.Trim()}"
        );

    [Fact]
    public void AFileHoldsOneType() =>
        Assert.Empty(Sources.Where(s => s.Types.Count() > 1).Select(s => $"{s.Path}: {string.Join(", ", s.Types)}"));

    [Fact]
    public void LinesAreAtMost120Columns() =>
        Assert.Empty(
            from folder in new[] { "src", "tests" }
            from source in SourceFile.Under(folder)
            from line in source.Wide(120)
            select $"{folder}/{source.Path}:{line}"
        );

    [Fact]
    public void AFileReadsInOneSitting() =>
        Assert.Empty(Sources.Where(s => s.Lines.Count() > 351).Select(s => $"{s.Path}: {s.Lines.Count()} lines"));

    /// <summary>Adding the thin-wall fan changed these files outside its folder, and no others.</summary>
    [Theory]
    [InlineData("WallFan", "WallSpec|WallPart|WallParameters")]
    [InlineData("PinRow", "PinSpec|PinPart|PinParameters|PinShape")]
    public void APartIsNamedInThreeFilesOutsideItsFolder(string folder, string types)
    {
        var named = new Regex($@"\b({types})\b");
        Assert.Equal(
            [
                "CalibGeom/TestObjects/Parts/ObjectParts.cs",
                "CalibGeom/TestObjects/Specs/SpecParameters.cs",
                "CalibGeom/TestObjects/Specs/TestObjectSpec.cs",
            ],
            Sources
                .Where(s => !s.Path.Contains($"/{folder}/", StringComparison.Ordinal) && named.IsMatch(s.Text))
                .Select(s => s.Path)
        );
    }

    /// <summary>The plinth is no part but the ground that all of them stand on.</summary>
    [Fact]
    public void LayoutRulesAndComparisonAskPartsAndNeverTheirNames() =>
        Assert.DoesNotContain(
            Sources
                .Where(s => AskingRooms.Any(r => s.Path.StartsWith(r, StringComparison.Ordinal)))
                .SelectMany(s => s.Usings),
            used =>
                used.StartsWith("CalibGeom.TestObjects.Parts.", StringComparison.Ordinal)
                && used != "CalibGeom.TestObjects.Parts.Plinth"
        );

    [Fact]
    public void NoIdIsTakenApartAsText() =>
        Assert.Empty(
            from source in Sources
            where source.Folder != "CalibGeom.Features"
            from line in source.Lines
            where IdAsText().IsMatch(line)
            select $"{source.Path}: {line.Trim()}"
        );

    [Fact]
    public void NinetyFivePercentIsSaidOnce() =>
        Assert.Equal(
            ["CalibGeom.Verification/Uncertainty/Coverage.cs"],
            Sources.Where(s => NinetyFivePercent().IsMatch(s.Text)).Select(s => s.Path)
        );

    /// <summary>Two numbers in brackets may be written for a point; else what is handed over has names.</summary>
    [Fact]
    public void NoPublicMemberHandsOverATuple() =>
        Assert.Equal(
            [
                "static CalibGeom.Planar.Vector2D.implicit operator CalibGeom.Planar.Vector2D((double X, double Y) point)",
            ],
            SourceFile
                .Under("src", "PublicAPI.*.txt")
                .SelectMany(f => f.Lines)
                .Where(l => Tuple().IsMatch(l))
                .Select(l => l.Split(" -> ")[0])
        );

    /// <summary>
    /// Longer records have names for their members; the record of a file is as long as the file has it.
    /// </summary>
    [Fact]
    public void NoPublicRecordHasMoreThanSixMembersInARow() =>
        Assert.Equal(
            ["StlFacet"],
            SourceFile
                .Under("src", "PublicAPI.*.txt")
                .SelectMany(f => f.Lines)
                .Where(l => l.Contains(".Deconstruct(", StringComparison.Ordinal) && l.Split("out ").Length > 7)
                .Select(l => l.Split(".Deconstruct(")[0].Split('.')[^1])
        );

    private static readonly string[] AskingRooms =
    [
        "CalibGeom/TestObjects/Layout/",
        "CalibGeom/TestObjects/Rules/",
        "CalibGeom/TestObjects/Comparison/",
    ];

    private static int Storey(string name) => Array.FindIndex(Storeys, s => Array.Exists(s, r => IsIn(name, r)));

    private static string? Room(string name) => Storeys.SelectMany(s => s).FirstOrDefault(r => IsIn(name, r));

    private static bool IsIn(string name, string room) =>
        name == room || name.StartsWith(room + ".", StringComparison.Ordinal);

    [GeneratedRegex("""<(?:ProjectReference|PackageReference) Include="(?:[^"]*[\\/])?([^"\\/]+?)(?:\.csproj)?" """)]
    private static partial Regex ReferenceLine();

    [GeneratedRegex("""<InternalsVisibleTo Include="([^"]+)" """)]
    private static partial Regex FriendLine();

    [GeneratedRegex("""["][^"]*(?<![\w-])--[a-z]""")]
    private static partial Regex OptionInString();

    [GeneratedRegex(
        """(StartsWith|EndsWith|Contains|Split)\((\$?"(box|joint|column|slot|squeeze|span|plinth)|"\.(x|y|z|height|fit)"|KnownFeatures\.)"""
    )]
    private static partial Regex IdAsText();

    [GeneratedRegex(@"(?<=[ <(,])(?<!operator [<>]=?)\(")]
    private static partial Regex Tuple();

    [GeneratedRegex(@"\b1\.9(6|59)\d*|\b0\.025\b|\b0\.975\b")]
    private static partial Regex NinetyFivePercent();
}
