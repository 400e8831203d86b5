using System.Runtime.InteropServices;
using CalibGeom.Formats.Stl;
using CalibGeom.Tests.Meshes;

namespace CalibGeom.Tests.Formats;

public class StlTriangleStreamTests
{
    [Fact]
    public void RecordsComeOutAsTheyLieInTheFile()
    {
        byte[] bytes = StlWriterTests.Bytes(SampleMeshes.Torus(9, 2, 80, 40));
        using var stream = StlTriangleStream.Open(new MemoryStream(bytes), "torus.stl");
        using var copy = new MemoryStream();
        copy.Write(stream.Header);
        copy.Write(bytes, 80, 4);
        int blocks = 0;
        for (ReadOnlySpan<StlFacet> block = stream.Next(); block.Length > 0; block = stream.Next(), blocks++)
            copy.Write(MemoryMarshal.AsBytes(block));
        Assert.Equal(3, blocks);
        Assert.Equal(6400, stream.TriangleCount);
        Assert.Equal(bytes, copy.ToArray());
    }

    [Theory]
    [InlineData(0, "0 bytes")]
    [InlineData(83, "83 bytes")]
    [InlineData(84, "ends at byte 84")]
    [InlineData(683, "ends at byte 683")]
    [InlineData(685, "1 bytes too many from byte 684 on")]
    [InlineData(734, "50 bytes too many from byte 684 on")]
    public void LengthMustAgreeWithTheCount(int length, string part)
    {
        byte[] bytes = StlWriterTests.Bytes(SampleMeshes.Box(1, 2, 3));
        Array.Resize(ref bytes, length);
        var error = Assert.Throws<InputException>(() => StlTriangleStream.Open(new MemoryStream(bytes), "box.stl"));
        Assert.Contains(part, error.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0, 0, "facet 0 has a normal that is not a finite number, at byte 84")]
    [InlineData(3, 11, "facet 3 has a corner that is not a finite number, at byte 278")]
    public void NumbersThatAreNotFiniteAreNamedByByte(int facet, int value, string part)
    {
        foreach (float bad in new[] { float.NaN, float.PositiveInfinity, float.NegativeInfinity })
        {
            byte[] bytes = StlWriterTests.Bytes(SampleMeshes.Box(1, 2, 3));
            MemoryMarshal.Write(bytes.AsSpan(84 + 50 * facet + 4 * value), in bad);
            var error = Assert.Throws<InputException>(() => StlReader.Read(new MemoryStream(bytes), "box.stl"));
            Assert.Contains(part, error.Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void AMissingFileIsAnInputError() =>
        Assert.Contains(
            "nowhere.stl",
            Assert.Throws<InputException>(() => StlReader.Read("nowhere.stl")).Message,
            StringComparison.Ordinal
        );
}
