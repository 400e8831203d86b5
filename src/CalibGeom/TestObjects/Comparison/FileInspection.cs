using CalibGeom.Formats;
using CalibGeom.Inspection;
using CalibGeom.Inspection.Layers;
using CalibGeom.Meshes;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.TestObjects.Comparison;

/// <summary>
/// Inspects what was read from a mesh file. Places are named after the parts of the object that the file should be or
/// that it carries as a spec.
/// </summary>
public static class FileInspection
{
    /// <summary>Inspects a file's mesh and says what reading left out.</summary>
    /// <param name="file">What was read.</param>
    /// <param name="name">What to call the file in findings.</param>
    /// <param name="settings">The process and limits; <c>null</c> takes the defaults.</param>
    /// <param name="wanted">The object whose sizes the mesh must have; <c>null</c> compares with nothing.</param>
    /// <param name="progress">Told the finished part, 0 to 1, now and then.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="InputException">The mesh is too large for the process.</exception>
    /// <exception cref="InvalidOperationException">The wanted object has no solid.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static MeshReport Run(
        MeshFile file,
        string name,
        LayerSettings? settings = null,
        TestObject? wanted = null,
        IProgress<double>? progress = null,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(file);
        ArgumentNullException.ThrowIfNull(name);
        TriangleMesh mesh = file.ToMesh();
        TestObject? ours = mesh.TriangleCount == 0 ? null : wanted ?? Carried(file);
        Func<Vector3D, string>? nameOf = ours is null ? null : SpecComparison.Names(mesh, ours);
        try
        {
            MeshReport report = MeshInspection.Run(mesh, settings, nameOf, progress, cancellation);
            return report.With([.. file.LeftOut(name), .. wanted is null ? [] : SpecComparison.Check(mesh, wanted)]);
        }
        catch (InputException e)
        {
            throw e.In(name);
        }
    }

    /// <summary>
    /// The object that a 3MF of ours carries; a spec from elsewhere that does not read names nothing.
    /// </summary>
    private static TestObject? Carried(MeshFile file)
    {
        if (file.SpecJson is null)
            return null;
        try
        {
            TestObject made = TestObject.Of(SpecJson.Parse(file.SpecJson));
            return made.Solid is null ? null : made;
        }
        catch (InputException)
        {
            return null;
        }
    }
}
