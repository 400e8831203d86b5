using CalibGeom.Formats;
using CalibGeom.Formats.Obj;
using CalibGeom.Formats.Stl;
using CalibGeom.Formats.ThreeMf;
using CalibGeom.Tests.Formats;
using CalibGeom.Tests.Meshes;

namespace CalibGeom.Tests.Docs;

public class FormatsExampleTests
{
    [Fact]
    public void TheExampleRunsAndStandsInTheDocs()
    {
        byte[] source = StlWriterTests.Bytes(SampleMeshes.Box(10, 20, 30));
        string path = Path.GetTempFileName();
        File.WriteAllBytes(path, source);
        using MemoryStream stl = new(),
            obj = new(),
            threeMf = new();
        try
        {
            // begin
            MeshFile file = MeshFile.Read(path, lenient: true);
            foreach (string dropped in file.Dropped)
                Console.Error.WriteLine(dropped);
            StlWriter.Write(stl, file.ToMesh(), "bracket, mm");
            ObjWriter.Write(obj, file.Objects);
            ThreeMfWriter.Write(threeMf, file.Objects, new ThreeMfContent { Title = "Bracket" });
            // end
        }
        finally
        {
            File.Delete(path);
        }

        Assert.Equal(source.Length, stl.Length);
        foreach (MemoryStream written in new[] { stl, obj, threeMf })
        {
            written.Position = 0;
            Assert.Equal(6000, MeshFile.Read(written, "written").ToMesh().Volume, 1e-9);
        }
        DocExample.RequireOn("docs/formats.md");
    }
}
