using CalibGeom.Inspection.Layers;
using CalibGeom.Inspection.Topology;
using CalibGeom.Meshes;

namespace CalibGeom.Inspection;

/// <summary>All checks on a mesh in one call: its surface, then layer by layer as a printer sees it.</summary>
public static class MeshInspection
{
    // About the share of time that the surface of a large mesh takes.
    private const double Surface = 0.4;

    /// <summary>Inspects a mesh that stands with its lowest point on the plate.</summary>
    /// <param name="mesh">Any mesh, mm; what is inside out or open is said and sliced as it is.</param>
    /// <param name="settings">The process and limits; <c>null</c> takes the defaults.</param>
    /// <param name="nameOf">Gives the feature id that belongs to a place (mm), or an empty text; may be left
    /// out.</param>
    /// <param name="progress">Told the finished part, 0 to 1, now and then.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="InputException">The mesh is too large for the process; see
    /// <see cref="LayerInspection.Run"/>.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static MeshReport Run(
        TriangleMesh mesh,
        LayerSettings? settings = null,
        Func<Vector3D, string>? nameOf = null,
        IProgress<double>? progress = null,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(mesh);
        TopologyReport topology = MeshTopology.Run(mesh, Part(progress, 0, Surface), cancellation);
        LayerReport layers = LayerInspection.Run(mesh, settings, Part(progress, Surface, 1), cancellation);
        return new MeshReport(
            topology,
            layers,
            [.. topology.ToFindings(nameOf, layers.LayerAt), .. layers.ToFindings(nameOf)]
        );
    }

    private static IProgress<double>? Part(IProgress<double>? whole, double from, double to) =>
        whole is null ? null : new PartProgress(whole, from, to);
}
