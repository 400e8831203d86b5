using CalibGeom.Inspection.Layers;
using CalibGeom.Meshes;

namespace CalibGeom.TestObjects.Comparison;

/// <summary>
/// What inspection finds in the layers of a tilted object. Roofs that were level hang aslant then, pockets keep resin
/// in a corner, and how far an underside sticks out follows from many layers: the design rules ask the same checks that
/// any mesh is held against.
/// </summary>
internal static class TiltedLayers
{
    /// <summary>Warnings and errors; none for an object that is not tilted or has no solid.</summary>
    internal static IEnumerable<Finding> Check(
        TestObject made,
        IProgress<double>? progress,
        CancellationToken cancellation
    )
    {
        if (made.Spec.Tilt.Angle == 0 || made.HasErrors)
            return [];
        TriangleMesh mesh = made.ToMesh(cancellation);
        return LayerInspection
            .Run(mesh, ProcessLayers.Of(made.Spec.Process), progress, cancellation)
            .ToFindings(new ObjectNames(made, made.Untilt()).Of)
            .Where(f => f.Severity > Severity.Note);
    }
}
