using CalibGeom.Inspection;
using CalibGeom.Inspection.Layers;
using CalibGeom.Solids;
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
    public void APresetIsReadyAsItIsAndAgreesTilted(string preset)
    {
        TestObjectSpec spec = Presets.Find(preset)!.Spec;
        Assert.All(TestObjectBuilder.Build(spec).FindingsAsPrinted, f => Assert.Equal(Severity.Note, f.Severity));
        RequireAgreement(spec);
        RequireAgreement(
            spec with
            {
                Tilt = new TiltSpec { Axis = TiltAxis.Y, Angle = 7 },
            }
        );
    }

    [Fact]
    public void RandomSpecsAreReadyWhereMakeIsSilent()
    {
        int runs = int.Parse(
            Environment.GetEnvironmentVariable("CALIBGEOM_AGREEMENT") ?? "6",
            System.Globalization.CultureInfo.InvariantCulture
        );
        Check.One(
            PropertySeed.Runs(runs),
            Prop.ForAll(
                PrintableSpecs
                    .Any.Where(s => TestObjectBuilder.Build(s).Findings.All(f => f.Severity == Severity.Note))
                    .ToArbitrary(),
                RequireAgreement
            )
        );
    }

    [Theory]
    [InlineData(5, true)]
    [InlineData(14, false)]
    public void WhatLayersShowOfATiltedObjectMakeSaysToo(double angle, bool silent)
    {
        TestObjectSpec spec = Presets.Find("witness")!.Spec with
        {
            Tilt = new TiltSpec { Axis = TiltAxis.X, Angle = angle },
        };
        TestObject made = TestObjectBuilder.Build(spec);
        Assert.Equal(silent, made.FindingsAsPrinted.All(f => f.Severity == Severity.Note));
        Assert.Equal(
            MeshInspection.Run(made.ToMesh()).Findings.Count(f => f.Severity > Severity.Note),
            made.FindingsAsPrinted.Count - made.Findings.Count
        );
    }

    private static void RequireAgreement(TestObjectSpec spec)
    {
        TestObject made = TestObjectBuilder.Build(spec);
        if (made.FindingsAsPrinted.Any(f => f.Severity > Severity.Note))
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
