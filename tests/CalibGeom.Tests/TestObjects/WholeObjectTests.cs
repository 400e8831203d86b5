using CalibGeom.TestObjects;
using CalibGeom.Tests.Meshes;
using FsCheck;
using FsCheck.Fluent;

namespace CalibGeom.Tests.TestObjects;

public class WholeObjectTests
{
    private const int Runs = 300;

    [Fact]
    public void EveryObjectThatTheRulesLetPassIsClosedInItsStlBytesAndHasTheTunnelsAndVolumeOfItsParts()
    {
        int accepted = 0,
            rejected = 0;
        var rules = new SortedDictionary<string, int>();
        Check.One(
            PropertySeed.Runs(Runs),
            Prop.ForAll(
                PrintableSpecs.Any.ToArbitrary(),
                spec =>
                {
                    TestObject made = TestObject.Of(spec);
                    if (made.HasErrors)
                    {
                        rejected++;
                        foreach (
                            string rule in made
                                .Findings.Where(f => f.Severity == Severity.Error)
                                .Select(f => f.Rule)
                                .Distinct()
                        )
                            rules[rule] = rules.GetValueOrDefault(rule) + 1;
                        return;
                    }
                    accepted++;
                    RequireSound(new PrintedObject(made));
                }
            )
        );
        Assert.True(
            rejected < accepted,
            $"the rules rejected {rejected} of {accepted + rejected} specs: {string.Join(", ", rules)}"
        );
    }

    [Fact]
    public void EverySpecInRangeIsAnsweredWithFindingsOrASolid() =>
        Check.One(
            PropertySeed.Runs(30),
            Prop.ForAll(
                RandomSpecs.Any.ToArbitrary(),
                spec =>
                {
                    TestObject made = TestObject.Of(spec);
                    Assert.All(
                        made.Findings,
                        f => Assert.False(f.Severity != Severity.Note && f.Remedy.Length == 0, f.Message)
                    );
                    Assert.True(made.HasErrors || made.Solid is not null);
                }
            )
        );

    private static void RequireSound(PrintedObject printed)
    {
        SurfaceCheck.RequireClosed(printed.Mesh);
        Assert.Equal(1, SurfaceCheck.Components(printed.Mesh));
        Assert.Equal(2 - 2 * printed.Made.TunnelCount, SurfaceCheck.EulerCharacteristic(printed.Mesh));
        double volume = printed.Made.Solid!.Volume,
            tolerance = printed.Made.Spec.Tilt.Angle == 0 ? 1e-9 : 1e-4;
        Assert.Equal(volume, printed.Mesh.Volume, volume * tolerance);
        Assert.Equal(0, printed.Mesh.Bounds.Min.Z);
    }
}
