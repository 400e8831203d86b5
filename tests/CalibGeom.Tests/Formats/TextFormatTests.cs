using System.Text;
using CalibGeom.Formats;

namespace CalibGeom.Tests.Formats;

public class TextFormatTests
{
    public static TheoryData<CorpusCase> Cases() =>
        [.. CorpusCase.Load("Formats/corpus/stl.txt").Concat(CorpusCase.Load("Formats/corpus/obj.txt"))];

    [Theory]
    [MemberData(nameof(Cases))]
    public void ReadsAsListed(CorpusCase item)
    {
        foreach (string lineEnd in new[] { "\n", "\r\n", "\r" })
        {
            byte[] bytes = Encoding.UTF8.GetBytes(item.Input.Replace("\n", lineEnd, StringComparison.Ordinal));
            if (item["error"] is { } error)
            {
                Assert.Contains(
                    error,
                    Assert.Throws<InputException>(() => Read(bytes, false)).Message,
                    StringComparison.Ordinal
                );
                MeshFile lenient = Read(bytes, true);
                Assert.Equal(item["lenient"], Summary(lenient));
                Assert.Contains(lenient.Dropped, d => d.StartsWith(item["dropped"]!, StringComparison.Ordinal));
            }
            else
                Check(item, Read(bytes, false));
        }
    }

    private static void Check(CorpusCase item, MeshFile file)
    {
        Assert.Equal(item["objects"], Summary(file));
        if (item["vertices"] is { } vertices)
            Assert.Equal(vertices, $"{file.Objects[0].Mesh.VertexCount}");
        if (item["area"] is { } area)
            Assert.Equal(
                double.Parse(area, System.Globalization.CultureInfo.InvariantCulture),
                file.Objects[0].Mesh.Area,
                1e-12
            );
        if (item["says"] is { } says)
            Assert.StartsWith(says, Assert.Single(file.Dropped), StringComparison.Ordinal);
        else
            Assert.Empty(file.Dropped);
    }

    private static string Summary(MeshFile file) =>
        string.Join('|', file.Objects.Select(o => $"{o.Name}={o.Mesh.TriangleCount}"));

    private static MeshFile Read(byte[] bytes, bool lenient) => MeshFile.Read(new MemoryStream(bytes), "case", lenient);
}
