namespace CalibGeom.Meshes;

/// <summary>
/// An indexed triangle mesh in flat arrays: coordinates x0 y0 z0 x1 ... in mm, three vertex indices a triangle, outward
/// normals by the right-hand rule. Nothing is promised about topology: any mesh fits, closed or not. Immutable and safe
/// to share between threads.
/// </summary>
public sealed partial class TriangleMesh
{
    private readonly double[] coordinates;
    private readonly int vertexCount;
    private readonly int[] triangles;

    /// <summary>A mesh; the arrays are copied.</summary>
    /// <param name="coordinates">x, y, z of each vertex in mm, all finite.</param>
    /// <param name="triangles">Three vertex indices for each triangle.</param>
    /// <exception cref="ArgumentException">A length is not a multiple of three, a coordinate is not finite, or an index
    /// has no vertex.</exception>
    public TriangleMesh(ReadOnlySpan<double> coordinates, ReadOnlySpan<int> triangles)
        : this(RequireThrees(coordinates.ToArray()), triangles.ToArray(), true) { }

    /// <summary>A mesh from 32-bit coordinates, as graphics libraries hold them; each is kept exactly.</summary>
    /// <param name="coordinates">x, y, z of each vertex in mm, all finite.</param>
    /// <param name="triangles">Three vertex indices for each triangle.</param>
    /// <exception cref="ArgumentException">A length is not a multiple of three, a coordinate is not finite, or an index
    /// has no vertex.</exception>
    public static TriangleMesh OfSingles(ReadOnlySpan<float> coordinates, ReadOnlySpan<int> triangles)
    {
        var wide = new double[coordinates.Length];
        for (int i = 0; i < wide.Length; i++)
            wide[i] = coordinates[i];
        return new TriangleMesh(RequireThrees(wide), triangles.ToArray(), true);
    }

    private TriangleMesh(double[] coordinates, int[] triangles, bool check)
        : this(coordinates, coordinates.Length / 3, triangles, check) { }

    private TriangleMesh(double[] coordinates, int vertexCount, int[] triangles, bool check)
    {
        if (check)
            Validate(coordinates.AsSpan(0, 3 * vertexCount), triangles);
        this.coordinates = coordinates;
        this.vertexCount = vertexCount;
        this.triangles = triangles;
    }

    /// <summary>A mesh that takes the arrays over without a copy; the caller must not change them afterwards.</summary>
    internal static TriangleMesh Adopt(double[] coordinates, int[] triangles) =>
        Adopt(coordinates, coordinates.Length / 3, triangles);

    /// <summary>The same, with an array that may have room for more vertices than there are.</summary>
    internal static TriangleMesh Adopt(double[] coordinates, int vertexCount, int[] triangles) =>
        new(coordinates, vertexCount, triangles, true);

    /// <summary>A mesh with no triangles.</summary>
    public static TriangleMesh Empty { get; } = new([], [], false);

    /// <summary>The number of vertices.</summary>
    public int VertexCount => vertexCount;

    /// <summary>The number of triangles.</summary>
    public int TriangleCount => triangles.Length / 3;

    /// <summary>x, y, z of each vertex in mm.</summary>
    public ReadOnlySpan<double> Coordinates => coordinates.AsSpan(0, 3 * vertexCount);

    /// <summary>Three vertex indices for each triangle.</summary>
    public ReadOnlySpan<int> Triangles => triangles;

    /// <summary>
    /// Copies the coordinates as 32-bit numbers, the nearest to each. Those on the grid (every mesh made here) within
    /// +-1024 mm are exact.
    /// </summary>
    /// <param name="to">Where to: three numbers for each vertex, or room for more.</param>
    /// <exception cref="ArgumentException">There is less room, or a coordinate is beyond 3.4e38 mm.</exception>
    public void CopyCoordinates(Span<float> to)
    {
        ReadOnlySpan<double> from = Coordinates;
        if (to.Length < from.Length)
            throw new ArgumentException(
                $"The {vertexCount} vertices need room for {from.Length} numbers; there is room for {to.Length}.",
                nameof(to)
            );
        for (int i = 0; i < from.Length; i++)
        {
            float single = (float)from[i];
            if (!float.IsFinite(single))
                throw new ArgumentException(
                    $"Vertex {i / 3} has a coordinate beyond 3.4e38 mm, the limit of a 32-bit number.",
                    nameof(to)
                );
            to[i] = single;
        }
    }

    /// <summary>A vertex.</summary>
    /// <param name="index">0 to <see cref="VertexCount"/> - 1.</param>
    /// <exception cref="IndexOutOfRangeException">No such vertex.</exception>
    public Vector3D Vertex(int index)
    {
        ReadOnlySpan<double> used = Coordinates;
        return new(used[3 * index], used[3 * index + 1], used[3 * index + 2]);
    }

    /// <summary>The corners of a triangle.</summary>
    /// <param name="index">0 to <see cref="TriangleCount"/> - 1.</param>
    /// <exception cref="IndexOutOfRangeException">No such triangle.</exception>
    public Triangle3D Triangle(int index) =>
        new(Vertex(triangles[3 * index]), Vertex(triangles[3 * index + 1]), Vertex(triangles[3 * index + 2]));

    private static double[] RequireThrees(double[] coordinates) =>
        coordinates.Length % 3 == 0
            ? coordinates
            : throw new ArgumentException(
                $"Coordinates come in threes; there are {coordinates.Length}.",
                nameof(coordinates)
            );

    private static void Validate(ReadOnlySpan<double> coordinates, int[] triangles)
    {
        if (triangles.Length % 3 != 0)
            throw new ArgumentException(
                $"Triangle indices come in threes; there are {triangles.Length}.",
                nameof(triangles)
            );
        for (int i = 0; i < coordinates.Length; i++)
            if (!double.IsFinite(coordinates[i]))
                throw new ArgumentException(
                    $"Vertex {i / 3} has a coordinate that is not finite.",
                    nameof(coordinates)
                );
        int count = coordinates.Length / 3;
        for (int i = 0; i < triangles.Length; i++)
            if ((uint)triangles[i] >= (uint)count)
                throw new ArgumentException(
                    $"Triangle {i / 3} names vertex {triangles[i]}; there are {count}.",
                    nameof(triangles)
                );
    }
}
