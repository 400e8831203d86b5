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

    /// <summary>Objects of a few vertices from all over the file are read with these alone, in file order.</summary>
    [Fact]
    public void AnObjectTakesItsOwnVerticesWhereverTheyStand()
    {
        const int Count = 300;
        string vertices = string.Concat(Enumerable.Range(0, Count + 2).Select(i => $"v {i} 0 0\nv {i} 1 {i % 7}\n")),
            faces = string.Concat(Enumerable.Range(0, Count).Select(i => $"o part{i}\nf -1 1 {2 * i + 3}\n"));
        MeshFile read = MeshFile.Read(new MemoryStream(System.Text.Encoding.ASCII.GetBytes(vertices + faces)), "wide");
        Assert.Equal(Count, read.Objects.Count);
        for (int i = 0; i < Count; i++)
        {
            (Vector3D a, Vector3D b, Vector3D c) = read.Objects[i].Mesh.Triangle(0);
            Assert.Equal(3, read.Objects[i].Mesh.VertexCount);
            Assert.Equal((new Vector3D(Count + 1, 1, (Count + 1) % 7), new Vector3D(0, 0, 0)), (a, b));
            Assert.Equal(new Vector3D(i + 1, 0, 0), c);
        }
    }

    private static byte[] Bytes(IReadOnlyList<MeshObject> objects)
    {
        using var stream = new MemoryStream();
        ObjWriter.Write(stream, objects);
        return stream.ToArray();
    }
}
