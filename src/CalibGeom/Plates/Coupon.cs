using CalibGeom.Meshes;

namespace CalibGeom.Plates;

/// <summary>
/// Something small that goes beside the parts: its mesh in its own coordinates and what to measure on it. Immutable.
/// </summary>
public sealed class Coupon
{
    /// <summary>A coupon.</summary>
    /// <param name="name">What it is called in messages and 3MF files, such as <c>witness</c>.</param>
    /// <param name="mesh">Its triangles, standing on their lowest z.</param>
    /// <param name="features">What to measure on it; none by default.</param>
    /// <exception cref="ArgumentException">The mesh has no triangles, or the name is empty.</exception>
    public Coupon(string name, TriangleMesh mesh, FeatureTable? features = null)
    {
        ArgumentException.ThrowIfNullOrEmpty(name);
        ArgumentNullException.ThrowIfNull(mesh);
        if (mesh.TriangleCount == 0)
            throw new ArgumentException($"The coupon {name} has no triangles.", nameof(mesh));
        (Name, Mesh, Features, Bounds) = (name, mesh, features, mesh.Bounds);
    }

    /// <summary>What it is called.</summary>
    public string Name { get; }

    /// <summary>Its triangles in its own coordinates.</summary>
    public TriangleMesh Mesh { get; }

    /// <summary>What to measure on it, or null.</summary>
    public FeatureTable? Features { get; }

    /// <summary>The box round it, in its own coordinates, mm.</summary>
    public Box3D Bounds { get; }
}
