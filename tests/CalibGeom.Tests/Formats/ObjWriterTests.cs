using System.Text;
using CalibGeom.Formats;
using CalibGeom.Formats.Obj;
using CalibGeom.Meshes;
using CalibGeom.Tests.Formats.ThreeMf;
using CalibGeom.Tests.Meshes;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace CalibGeom.Tests.Formats;

public class ObjWriterTests
{
    [Fact]
    public void WritesPlainText()
    {
        TriangleMesh mesh = new([0, -0.0, 0.1, 1e-7, 2, 3, 1, 1, 1], [0, 1, 2]);
        Assert.Equal(
            "# mm\no a b\nv 0 0 0.1\nv 1E-07 2 3\nv 1 1 1\nf 1 2 3\n",
            Encoding.UTF8.GetString(Bytes([new("a\r\nb", mesh)]))
        );
    }

    [Property(MaxTest = 60)]
    public Property WriteReadIsIdentity() =>
        Prop.ForAll(
            Gen.OneOf(SampleMeshes.Soups(), SampleMeshes.Bodies()).Where(m => m.TriangleCount > 0).ToArbitrary(),
            mesh =>
            {
                TriangleMesh used = Used(mesh);
                List<MeshObject> objects = [new("first", used), new("second part", used.Transform(Affine3D.TurnX(33)))];
                MeshFile read = MeshFile.Read(new MemoryStream(Bytes(objects)), "x");
                Assert.Equal(objects.Select(o => o.Name), read.Objects.Select(o => o.Name));
                for (int i = 0; i < 2; i++)
                    ThreeMfWriterTests.Same(objects[i].Mesh, read.Objects[i].Mesh);
            }
        );

    /// <summary>An OBJ object has only the vertices that its faces use.</summary>
    private static TriangleMesh Used(TriangleMesh mesh)
    {
        int[] used = [.. mesh.Triangles.ToArray().Distinct().Order()];
        return new(
            [.. used.SelectMany(v => new[] { mesh.Vertex(v).X, mesh.Vertex(v).Y, mesh.Vertex(v).Z })],
            [.. mesh.Triangles.ToArray().Select(v => Array.IndexOf(used, v))]
        );
    }

    private static byte[] Bytes(IReadOnlyList<MeshObject> objects)
    {
        using var stream = new MemoryStream();
        ObjWriter.Write(stream, objects);
        return stream.ToArray();
    }
}
