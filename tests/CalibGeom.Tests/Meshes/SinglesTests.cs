using CalibGeom.Meshes;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace CalibGeom.Tests.Meshes;

/// <summary>Meshes from 32-bit coordinates and back.</summary>
public class SinglesTests
{
    [Property]
    public bool WhatComesAsSinglesGoesAsTheSame(float[] raw)
    {
        float[] given = [.. raw.Where(float.IsFinite)];
        given = given[..(given.Length / 3 * 3)];
        var back = new float[given.Length];
        TriangleMesh.OfSingles(given, []).CopyCoordinates(back);
        return given.SequenceEqual(back);
    }

    [Fact]
    public void AMeshMadeHereIsTheSameAfterSingles()
    {
        TriangleMesh made = TestObject.Of(Presets.Standard with { Tilt = new TiltSpec { Angle = 10 } }).ToMesh();
        var singles = new float[3 * made.VertexCount];
        made.CopyCoordinates(singles);
        var back = TriangleMesh.OfSingles(singles, made.Triangles);
        Assert.Equal(made.Coordinates, back.Coordinates);
        Assert.Equal(made.Triangles, back.Triangles);
    }

    [Fact]
    public void RoomForMoreIsLeftAsItWas()
    {
        float[] to = [9, 9, 9, 9, 9];
        new TriangleMesh([1, 2, 3], []).CopyCoordinates(to);
        Assert.Equal([1, 2, 3, 9, 9], to);
    }

    [Fact]
    public void WhatDoesNotFitIsRefused()
    {
        Assert.Throws<ArgumentException>(() => TriangleMesh.OfSingles([1, 2], []));
        Assert.Throws<ArgumentException>(() => TriangleMesh.OfSingles([1, 2, float.NaN], []));
        Assert.Throws<ArgumentException>(() => TriangleMesh.OfSingles([1, 2, 3], [0, 0, 1]));
        var mesh = new TriangleMesh([1, 2, 1e39], []);
        Assert.Throws<ArgumentException>(() => mesh.CopyCoordinates(new float[2]));
        ArgumentException far = Assert.Throws<ArgumentException>(() => mesh.CopyCoordinates(new float[3]));
        Assert.Contains("Vertex 0", far.Message, StringComparison.Ordinal);
    }
}
