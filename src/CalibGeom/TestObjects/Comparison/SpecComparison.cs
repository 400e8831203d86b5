using CalibGeom.Meshes;
using CalibGeom.TestObjects.Parts;

namespace CalibGeom.TestObjects.Comparison;

/// <summary>
/// Holds a mesh against the object that a spec describes, wherever it was moved to, tilted as the spec says: the outer
/// size and, along its gauge lines, every size and count of the feature table.
/// </summary>
public static class SpecComparison
{
    /// <summary>The largest difference, mm, that is no finding: 0.003.</summary>
    public const double Tolerance = 0.003;

    /// <summary>Findings for every size that differs or is missing; none when the mesh has the spec's sizes.</summary>
    /// <param name="mesh">A mesh, moved but not turned otherwise than the spec's tilt says.</param>
    /// <param name="made">The object that it should be.</param>
    /// <exception cref="InvalidOperationException">The object has no solid.</exception>
    public static IReadOnlyList<Finding> Check(TriangleMesh mesh, TestObject made)
    {
        ArgumentNullException.ThrowIfNull(mesh);
        ArgumentNullException.ThrowIfNull(made);
        if (mesh.TriangleCount == 0)
            return [new Finding("spec-size", Severity.Error, "", "The mesh is empty.", "")];
        var findings = new SizeFindings();
        Box3D expected = made.ToMesh().Bounds,
            found = mesh.Bounds;
        findings.Require("size.x", expected.Size.X, found.Size.X);
        findings.Require("size.y", expected.Size.Y, found.Size.Y);
        findings.Require("size.z", expected.Size.Z, found.Size.Z);
        var sizes = new GaugeSizes(mesh.Transform(ToObject(found, expected, made)), findings);
        foreach ((ITestPart part, PartPlace place) in made.Plan.Parts)
            sizes.Check(part.Features(place));
        return findings.All;
    }

    /// <summary>
    /// Tells which part of an object a place of its mesh belongs to (<c>box2</c>, <c>column7</c>, <c>slots</c>,
    /// <c>span.x</c>, <c>plinth</c>, <c>label.title</c>); empty when none.
    /// </summary>
    /// <param name="mesh">The object's mesh with triangles, wherever it was moved to, tilted as the spec says.</param>
    /// <param name="made">The object.</param>
    /// <exception cref="InvalidOperationException">The object has no solid.</exception>
    public static Func<Vector3D, string> Names(TriangleMesh mesh, TestObject made)
    {
        ArgumentNullException.ThrowIfNull(mesh);
        ArgumentNullException.ThrowIfNull(made);
        return new ObjectNames(made, ToObject(mesh.Bounds, made.ToMesh().Bounds, made)).Of;
    }

    /// <summary>Back to where the object stands untilted, its plinth's centre at X = Y = 0.</summary>
    private static Affine3D ToObject(Box3D found, Box3D expected, TestObject made) =>
        Affine3D.Shift(expected.Min - found.Min).Then(made.Untilt());
}
