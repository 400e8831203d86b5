namespace CalibGeom.Meshes;

/// <summary>
/// An affine map: a point p goes to X px + Y py + Z pz + Translation. X, Y and Z are the images of the axes.
/// </summary>
/// <param name="X">Where the unit vector of the x axis goes.</param>
/// <param name="Y">Where the unit vector of the y axis goes.</param>
/// <param name="Z">Where the unit vector of the z axis goes.</param>
/// <param name="Translation">Where the origin goes, mm.</param>
public readonly record struct Affine3D(Vector3D X, Vector3D Y, Vector3D Z, Vector3D Translation)
{
    /// <summary>The map that changes nothing.</summary>
    public static Affine3D Identity { get; } = new(new(1, 0, 0), new(0, 1, 0), new(0, 0, 1), default);

    /// <summary>The factor by which volumes grow; negative when the map mirrors, 0 when it flattens.</summary>
    public double Determinant => Vector3D.Dot(X, Vector3D.Cross(Y, Z));

    /// <summary>A shift.</summary>
    /// <param name="by">mm.</param>
    public static Affine3D Shift(Vector3D by) => Identity with { Translation = by };

    /// <summary>The same scale in all directions, about the origin.</summary>
    /// <param name="factor">The factor.</param>
    public static Affine3D Scale(double factor) =>
        new(new(factor, 0, 0), new(0, factor, 0), new(0, 0, factor), default);

    /// <summary>A turn about the x axis by the right-hand rule; multiples of 90 degrees are exact.</summary>
    /// <param name="degrees">The angle in degrees.</param>
    public static Affine3D TurnX(double degrees)
    {
        (double sin, double cos) = SinCos(degrees);
        return new(new(1, 0, 0), new(0, cos, sin), new(0, -sin, cos), default);
    }

    /// <summary>A turn about the y axis by the right-hand rule; multiples of 90 degrees are exact.</summary>
    /// <param name="degrees">The angle in degrees.</param>
    public static Affine3D TurnY(double degrees)
    {
        (double sin, double cos) = SinCos(degrees);
        return new(new(cos, 0, -sin), new(0, 1, 0), new(sin, 0, cos), default);
    }

    /// <summary>A turn about the z axis by the right-hand rule; multiples of 90 degrees are exact.</summary>
    /// <param name="degrees">The angle in degrees.</param>
    public static Affine3D TurnZ(double degrees)
    {
        (double sin, double cos) = SinCos(degrees);
        return new(new(cos, sin, 0), new(-sin, cos, 0), new(0, 0, 1), default);
    }

    /// <summary>Where a point goes.</summary>
    /// <param name="point">mm.</param>
    public Vector3D Apply(Vector3D point) => ApplyLinear(point) + Translation;

    /// <summary>This map first, then another.</summary>
    /// <param name="next">The map applied to the result.</param>
    public Affine3D Then(Affine3D next) =>
        new(next.ApplyLinear(X), next.ApplyLinear(Y), next.ApplyLinear(Z), next.Apply(Translation));

    private Vector3D ApplyLinear(Vector3D v) => X * v.X + Y * v.Y + Z * v.Z;

    private static (double Sin, double Cos) SinCos(double degrees)
    {
        double turn = Math.IEEERemainder(degrees, 360);
        if (turn == 0)
            return (0, 1);
        if (Math.Abs(turn) == 180)
            return (0, -1);
        if (Math.Abs(turn) == 90)
            return (Math.Sign(turn), 0);
        return Math.SinCos(turn * (Math.PI / 180));
    }
}
