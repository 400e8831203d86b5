using System.Globalization;
using CalibGeom.Cli.Shared;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Cli.Tests;

/// <summary>
/// generated/ holds every preset; each is made again byte for byte, whatever the culture and on several threads at
/// once.
/// </summary>
public class GeneratedFilesTests
{
    public static TheoryData<string> PresetNames => [.. Presets.All.Select(p => p.Name)];

    public static TheoryData<string> Cultures => ["de-DE", "fr-FR", "tr-TR", "ar-SA", "fa-IR"];

    [Theory]
    [MemberData(nameof(PresetNames))]
    public void AreReproduced(string name)
    {
        (byte[] mesh, byte[] features) = Make(name, CultureInfo.InvariantCulture);
        RepositoryFile.RequireHolds($"generated/{name}.stl", mesh);
        RepositoryFile.RequireHolds($"generated/{name}.features.csv", features);
    }

    [Theory]
    [MemberData(nameof(Cultures))]
    public void TheCultureChangesNothing(string culture) => AssertAllSame(CultureInfo.GetCultureInfo(culture));

    [Fact]
    public void TheCultureIsNotEvenAsked() => AssertAllSame(new FailingCulture());

    [Fact]
    public void ThreadsDoNotDisturbEachOther()
    {
        (byte[] mesh, byte[] features) = Make("witness", CultureInfo.InvariantCulture);
        var made = new (byte[] Mesh, byte[] Features)[8];
        Parallel.For(
            0,
            made.Length,
            new ParallelOptions { MaxDegreeOfParallelism = 4 },
            i => made[i] = Make("witness", CultureInfo.InvariantCulture)
        );
        Assert.All(made, m => Assert.Equal(mesh, m.Mesh));
        Assert.All(made, m => Assert.Equal(features, m.Features));
    }

    private static void AssertAllSame(CultureInfo culture)
    {
        foreach (Preset preset in Presets.All)
        {
            (byte[] mesh, byte[] features) = Make(preset.Name, culture);
            Assert.Equal(File.ReadAllBytes(Path.Combine(Repository.Root, "generated", $"{preset.Name}.stl")), mesh);
            Assert.Equal(
                File.ReadAllBytes(Path.Combine(Repository.Root, "generated", $"{preset.Name}.features.csv")),
                features
            );
        }
    }

    /// <summary>From the commented text of a preset to files, as a person would.</summary>
    private static (byte[] Mesh, byte[] Features) Make(string name, CultureInfo culture)
    {
        using var folder = new TemporaryFolder();
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = culture;
            folder.Write($"{name}.json", CliRun.Of("presets", name).Out);
            Assert.Equal(
                ExitCode.Done,
                CliRun.Of("make", "--object", folder[$"{name}.json"], "-o", folder["out.stl"]).ExitCode
            );
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
        return (File.ReadAllBytes(folder["out.stl"]), File.ReadAllBytes(folder["out.features.csv"]));
    }
}
