using CalibGeom.Inspection;
using CalibGeom.Inspection.Layers;
using CalibGeom.Meshes;
using CalibGeom.Planar;
using CalibGeom.Solids;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Comparison;
using CalibGeom.TestObjects.Specs;
using FsCheck;
using FsCheck.Fluent;

namespace CalibGeom.Tests.TestObjects;

/// <summary>
/// What the design rules let pass without a warning, inspection finds ready to print: CALIBGEOM_AGREEMENT tells how
/// many random specs to try, 6 by default. Where a tilted object makes the rules ask the layers themselves, its flat
/// undersides are measured on the triangles too, without any layer.
/// </summary>
public class AgreementTests
{
    public static TheoryData<string> PresetNames => new(Presets.All.Select(p => p.Name));

    [Theory]
    [MemberData(nameof(PresetNames))]
    public void APresetIsReadyAsItIsAndAgreesTilted(string preset)
    {
        TestObjectSpec spec = Presets.Find(preset)!.Spec;
        Assert.All(TestObject.Of(spec).CheckAsPrinted(), f => Assert.Equal(Severity.Note, f.Severity));
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
                    .Any.Where(s => TestObject.Of(s).Findings.All(f => f.Severity == Severity.Note))
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
        TestObjectSpec spec = Presets.Witness with
        {
            Tilt = new TiltSpec { Axis = TiltAxis.X, Angle = angle },
        };
        TestObject made = TestObject.Of(spec);
        Assert.Equal(silent, made.CheckAsPrinted().All(f => f.Severity == Severity.Note));
        Assert.Equal(
            MeshInspection.Run(made.ToMesh()).Findings.Count(f => f.Severity > Severity.Note),
            made.CheckAsPrinted().Count - made.Findings.Count
        );
    }

    /// <summary>A shelf 8 mm wide and 20 mm long on a post, its underside rising by an angle.</summary>
    [Theory]
    [InlineData(5, 8)]
    [InlineData(29, 8)]
    [InlineData(31, 0)]
    public void AFlatUndersideIsAsWideAsItIs(double degrees, double width)
    {
        double top = 4 + 20 * Math.Tan(degrees * Math.PI / 180);
        Outline profile = Outline.FromMillimetres((0, 0), (5, 0), (5, 4), (25, top), (25, top + 2), (0, top + 2));
        TriangleMesh mesh = new Solid(Loft.Prism(new Region(profile), 0, 8)).ToMesh().Transform(Affine3D.TurnX(90));
        Assert.Equal(width, FlatUndersides.Widest(mesh), 0.01);
    }

    private static void RequireAgreement(TestObjectSpec spec)
    {
        TestObject made = TestObject.Of(spec);
        if (made.CheckAsPrinted().Any(f => f.Severity > Severity.Note))
            return;
        MeshReport report = MeshInspection.Run(made.ToMesh(), ProcessLayers.Of(spec.Process));
        Assert.True(
            report.Verdict == MeshVerdict.Ready,
            string.Join("\n", report.Findings.Where(f => f.Severity > Severity.Note).Select(f => f.Message))
        );
        // A pixel on each side may be carried or not.
        double carried =
            new LayerSettings().CarriedBridge
            + 2 * Math.Max(report.Layers.Settings.PixelX, report.Layers.Settings.PixelY);
        Assert.InRange(FlatUndersides.Widest(made.ToMesh()), 0, carried);
    }
}
