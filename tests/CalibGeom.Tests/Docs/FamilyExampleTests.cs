using CalibGeom.Formats.Stl;
using CalibGeom.Objects.Families;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Tests.Docs;

public class FamilyExampleTests
{
    [Fact]
    public void TheExampleRunsAndStandsOnThePage()
    {
        string folder = Directory.CreateTempSubdirectory("calibgeom-").FullName;
        try
        {
            // begin
            var family = new ObjectFamily(
                "witness",
                Presets.Witness,
                [SweepAxis.Parse("nest.clearances=0.03,0.05"), new SweepAxis("columns.height", ["5", "6"])]
            );
            FamilyResult result = FamilyMaker.Run(
                family,
                FamilyShard.Parse("2/2"),
                Path.Combine(folder, "{n}.stl"),
                (name, made, mesh, path) =>
                {
                    using FileStream stream = File.Create(path);
                    StlWriter.Write(stream, mesh, ObjectHeader.Of(name, SpecDigest.Of(made.Spec)));
                }
            );
            // end

            Assert.Equal([2, 4], result.Rows.Select(r => r.Number));
            Assert.Equal(
                [
                    ["0.03", "6"],
                    ["0.05", "6"],
                ],
                result.Rows.Select(r => r.Values)
            );
            Assert.All(result.Rows, r => Assert.True(File.Exists(Path.Combine(folder, r.File)) && r.Volume > 1000));
            DocExample.RequireOn("docs/family.md");
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
