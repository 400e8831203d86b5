using CalibGeom.Inspection;
using CalibGeom.Inspection.Layers;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;
using FsCheck;
using FsCheck.Fluent;

namespace CalibGeom.Tests.TestObjects;

/// <summary>
/// What the design rules let pass without a warning, inspection finds ready to print: CALIBGEOM_AGREEMENT tells how
/// many random specs to try, 6 by default.
/// </summary>
public class AgreementTests
{
    public static TheoryData<string> PresetNames => new(Presets.All.Select(p => p.Name));

    [Theory]
    [MemberData(nameof(PresetNames))]
    public void APresetIsReadyAsItIsAndTilted(string preset)
    {
        TestObjectSpec spec = Presets.Find(preset)!.Spec;
        // The vent roofs of fine at 5 degrees are still judged more strictly by inspection than by the design rules.
        foreach (double tilt in preset == "fine" ? new[] { 0.0 } : [0, 5])
            RequireAgreement(spec with { Tilt = spec.Tilt with { Angle = tilt } });
    }

    [Fact]
    public void RandomSpecsWithoutTiltAreReady()
    {
        int runs = int.Parse(
            Environment.GetEnvironmentVariable("CALIBGEOM_AGREEMENT") ?? "6",
            System.Globalization.CultureInfo.InvariantCulture
        );
        Check.One(
            PropertySeed.Runs(runs),
            Prop.ForAll(
                PrintableSpecs
                    .Any.Select(s => s with { Tilt = new TiltSpec() })
                    .Where(s => TestObjectBuilder.Build(s).Findings.All(f => f.Severity == Severity.Note))
                    .ToArbitrary(),
                RequireAgreement
            )
        );
    }

    private static void RequireAgreement(TestObjectSpec spec)
    {
        TestObject made = TestObjectBuilder.Build(spec);
        if (made.Findings.Any(f => f.Severity > Severity.Note))
            return;
        var settings = new LayerSettings();
        if (spec.Process is { } process)
            settings = settings with
            {
                LayerHeight = process.LayerHeight,
                PixelX = process.PixelPitch.X,
                PixelY = process.PixelPitch.Y,
            };
        MeshReport report = MeshInspection.Run(made.ToMesh(), settings);
        Assert.True(
            report.Verdict == MeshVerdict.Ready,
            string.Join("\n", report.Findings.Where(f => f.Severity > Severity.Note).Select(f => f.Message))
        );
    }
}
