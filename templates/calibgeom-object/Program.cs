using CalibGeom.Features;
using CalibGeom.Formats.Stl;
using CalibGeom.Objects;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;

// Start from a preset and change what you like; every value is checked.
TestObjectSpec spec = Presets.Standard with
{
    Title = "Demo grey",
    Process = new ProcessSpec { PixelPitch = 0.04, LayerHeight = 0.05 },
};

TestObject made = TestObject.Of(spec);
foreach (Finding finding in made.Findings.Where(f => f.Severity != Severity.Note))
    Console.Error.WriteLine($"{finding.Severity} {finding.Subject}: {finding.Message} {finding.Remedy}");
if (made.HasErrors)
    return 1;

// The mesh for the slicer, what to measure, and what later steps know the object by.
string name = args.Length > 0 ? args[0] : "object";
using FileStream stl = File.Create(name + ".stl"),
    table = File.Create(name + ".features.csv"),
    known = File.Create(name + ObjectFile.Extension);
StlWriter.Write(stl, made.ToMesh(), ObjectHeader.Of(name, SpecDigest.Of(spec)));
FeatureTableCsv.Write(table, made.Features);
ObjectFileJson.Write(known, new ObjectFile(name, spec) { Mesh = name + ".stl" });
Console.WriteLine($"wrote {name}.stl: {made.Features.Count} things to measure");
return 0;
