namespace CalibGeom.Meshes;

/// <summary>A point or vector in space, mm.</summary>
/// <param name="X">mm, to the right.</param>
/// <param name="Y">mm, to the back.</param>
/// <param name="Z">mm, up.</param>
public readonly record struct Vector3D(double X, double Y, double Z)
{
    /// <summary>The length, mm.</summary>
    public double Length => Math.Sqrt(Dot(this, this));

    /// <summary>Sum of two vectors.</summary>
    public static Vector3D operator +(Vector3D a, Vector3D b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    /// <summary>Difference of two vectors.</summary>
    public static Vector3D operator -(Vector3D a, Vector3D b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    /// <summary>A vector times a number.</summary>
    public static Vector3D operator *(Vector3D a, double factor) => new(a.X * factor, a.Y * factor, a.Z * factor);

    /// <summary>Scalar product.</summary>
    public static double Dot(Vector3D a, Vector3D b) => a.X * b.X + a.Y * b.Y + a.Z * b.Z;

    /// <summary>Vector product.</summary>
    public static Vector3D Cross(Vector3D a, Vector3D b) =>
        new(a.Y * b.Z - a.Z * b.Y, a.Z * b.X - a.X * b.Z, a.X * b.Y - a.Y * b.X);

    /// <summary>The lesser of each coordinate.</summary>
    internal static Vector3D Least(Vector3D a, Vector3D b) =>
        new(Math.Min(a.X, b.X), Math.Min(a.Y, b.Y), Math.Min(a.Z, b.Z));

    /// <summary>The larger of each coordinate.</summary>
    internal static Vector3D Most(Vector3D a, Vector3D b) =>
        new(Math.Max(a.X, b.X), Math.Max(a.Y, b.Y), Math.Max(a.Z, b.Z));
}
