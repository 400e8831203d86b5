using CalibGeom.Formats;
using CalibGeom.Formats.Obj;
using CalibGeom.Formats.Stl;
using CalibGeom.Formats.ThreeMf;
using CalibGeom.Meshes;
using CalibGeom.Objects;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Tests.Formats;

/// <summary>Nothing is synchronous on the streams of a web server, and the bytes are those of the other
/// writers.</summary>
public class AsyncStreamTests
{
    private static readonly TestObject Made = TestObject.Of(Presets.Witness);

    [Theory]
    [InlineData("a.stl")]
    [InlineData("a.obj")]
    [InlineData("a.3mf")]
    public async Task MeshesGoThere(string name)
    {
        MeshObject[] objects = [new("witness", Made.ToMesh())];
        using var expected = new MemoryStream();
        MeshFile.Write(expected, name, objects);
        using var stream = new AsyncOnlyStream();
        await MeshFile.WriteAsync(stream, name, objects);
        Assert.Equal(expected.ToArray(), stream.Written);

        using var back = new AsyncOnlyStream(stream.Written);
        TriangleMesh read = (await MeshFile.ReadAsync(back, name)).ToMesh();
        Assert.Equal(Made.ToMesh().TriangleCount, read.TriangleCount);
        Assert.Equal(Made.ToMesh().Volume, read.Volume, 1e-3);
    }

    [Fact]
    public async Task EachFormatsOwnWriterDoes()
    {
        TriangleMesh mesh = Made.ToMesh();
        MeshObject[] objects = [new("witness", mesh)];
        var content = new ThreeMfContent();
        await Same(s => StlWriter.Write(s, mesh, "a"), s => StlWriter.WriteAsync(s, mesh, "a"));
        await Same(s => ObjWriter.Write(s, objects), s => ObjWriter.WriteAsync(s, objects));
        await Same(s => ThreeMfWriter.Write(s, objects, content), s => ThreeMfWriter.WriteAsync(s, objects, content));
    }

    [Fact]
    public async Task SpecsTablesAndObjectsComeFromThere()
    {
        var file = new ObjectFile("witness", Presets.Witness);
        byte[] table = await Same(
            s => FeatureTableCsv.Write(s, Made.Features),
            s => FeatureTableCsv.WriteAsync(s, Made.Features)
        );
        byte[] json = await Same(
            s => FeatureTableJson.Write(s, Made.Features),
            s => FeatureTableJson.WriteAsync(s, Made.Features)
        );
        byte[] known = await Same(s => ObjectFileJson.Write(s, file), s => ObjectFileJson.WriteAsync(s, file));
        Assert.Equal(Made.Features.Count, (await FeatureTableCsv.ReadAsync(new AsyncOnlyStream(table))).Count);
        Assert.Equal(Made.Features.Count, (await FeatureTableJson.ReadAsync(new AsyncOnlyStream(json))).Count);
        Assert.Equal(
            SpecDigest.Of(Presets.Witness),
            (await ObjectFileJson.ReadAsync(new AsyncOnlyStream(known), "known")).Digest
        );
        byte[] spec = SpecJson.ToCanonicalBytes(Presets.Witness);
        Assert.Equal(Presets.Witness, await SpecJson.ReadAsync(new AsyncOnlyStream(spec)));
    }

    [Fact]
    public async Task WhatIsTooLargeIsSaid()
    {
        using var endless = new AsyncOnlyStream(new byte[SpecJson.MaximumBytes + 2000]);
        InputException e = await Assert.ThrowsAsync<InputException>(() => SpecJson.ReadAsync(endless));
        Assert.Contains("larger than 1024 KiB", e.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task AStoppedReadingOrWritingSaysSo()
    {
        using var stopped = new CancellationTokenSource();
        await stopped.CancelAsync();
        using var stream = new AsyncOnlyStream(new byte[5000]);
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() =>
            MeshFile.ReadAsync(stream, "a.stl", cancellation: stopped.Token)
        );
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() =>
            StlWriter.WriteAsync(stream, Made.ToMesh(), "a", stopped.Token)
        );
        Assert.Equal(5000, stream.Written.Length);
    }

    private static async Task<byte[]> Same(Action<Stream> write, Func<Stream, Task> writeAsync)
    {
        using var expected = new MemoryStream();
        write(expected);
        using var stream = new AsyncOnlyStream();
        await writeAsync(stream);
        Assert.Equal(expected.ToArray(), stream.Written);
        return stream.Written;
    }
}
