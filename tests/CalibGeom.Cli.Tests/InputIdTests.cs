using System.Reflection;
using CalibGeom.Features.Files;
using CalibGeom.Formats;
using CalibGeom.Objects;
using CalibGeom.Objects.Families;
using CalibGeom.Plates;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;
using CalibGeom.Verification.Calipers;
using CalibGeom.Verification.Clearances;
using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Cli.Tests;

/// <summary>Each kind of input that cannot be used is told by its id.</summary>
public class InputIdTests
{
    private static readonly Dictionary<string, Action> Wrong = new()
    {
        [InputIds.Other] = () => throw new InputException("of no kind"),
        [InputIds.File] = () => AppendedFile.Append(Path.Combine("no such folder", "log.jsonl"), _ => ""),
        [InputIds.Spec] = () => SpecJson.Parse("""{ "nest": { "clearance": [0.05] } }"""),
        [InputIds.Family] = () => SweepAxis.Parse("nest.clearances"),
        [InputIds.ObjectFile] = () => ObjectFileJson.Parse("{}", "a.object.json"),
        [InputIds.FeatureTable] = () => FeatureTableCsv.Parse("feature,nominal,unit,axis,how\nbox1.height,1,inch,z,\n"),
        [InputIds.Mesh] = () => MeshFile.Read(new MemoryStream([1, 2, 3]), "a.stl"),
        [InputIds.Plate] = OpenPartWithoutFacets,
        [InputIds.Readings] = () => ReadingsFile.Parse("feature,value\nbox1.outside.x,eight\n"),
        [InputIds.CaliperRecord] = () => CaliperRecordFile.Parse("# caliper cal\nwhat,is,this\n"),
        [InputIds.Log] = () => TrialLog.Read(new MemoryStream("not json\nat all\n"u8.ToArray())),
        [InputIds.Question] = () =>
            ClearancePrediction.Of(
                TestObject.Of(Presets.Witness).Features,
                ReadingsFile.Parse("feature,value\nbox1.height,9\n")
            ),
        [InputIds.Option] = () => Place.PlateText.Parse("a plate"),
    };

    public static TheoryData<string> Ids =>
        [
            .. typeof(InputIds)
                .GetFields(BindingFlags.Public | BindingFlags.Static)
                .Select(f => (string)f.GetValue(null)!),
        ];

    [Theory]
    [MemberData(nameof(Ids))]
    public void AnErrorSaysOfWhatKindTheInputIs(string id) =>
        Assert.Equal(id, Assert.Throws<InputException>(Wrong[id]).Id);

    private static void OpenPartWithoutFacets()
    {
        using var folder = new TemporaryFolder();
        using (FileStream stl = File.Create(folder["part.stl"]))
            Formats.Stl.StlWriter.Write(stl, Meshes.TriangleMesh.Empty, "empty");
        PlatePart.Open(folder["part.stl"]);
    }
}
