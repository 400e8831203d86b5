using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace CalibGeom.Formats.Stl;

/// <summary>
/// Fills blocks of binary facets, four numbers at a time: x, y, z and one that is not wanted. What that one leaves
/// behind a corner is overwritten by what follows there; behind the last corner it is the attribute word and is 0.
/// </summary>
internal static class StlBlock
{
    /// <summary>Numbers or bytes that both arrays hold behind what is wanted of them.</summary>
    internal const int Beyond = 16;

    private const int Corner = 3 * sizeof(float);

    private static readonly Vector128<float> Three = Vector128.Create(-1, -1, -1, 0).AsSingle();

    /// <summary>Rounds coordinates (mm) to 32-bit floats; -0 becomes 0.</summary>
    /// <exception cref="ArgumentException">One is too large.</exception>
    internal static void ToSingles(ReadOnlySpan<double> coordinates, Span<float> singles)
    {
        singles = singles[..(coordinates.Length + Beyond)];
        int done = 0;
        var largest = Vector<float>.Zero;
        for (; done + Vector<float>.Count <= coordinates.Length; done += Vector<float>.Count)
        {
            Vector<float> rounded =
                Vector.Narrow(
                    new Vector<double>(coordinates[done..]),
                    new Vector<double>(coordinates[(done + Vector<double>.Count)..])
                ) + Vector<float>.Zero;
            largest = Vector.Max(largest, Vector.Abs(rounded));
            rounded.CopyTo(singles[done..]);
        }
        bool finite = Vector.LessThanAll(largest, new Vector<float>(float.PositiveInfinity));
        for (; done < coordinates.Length; done++)
        {
            singles[done] = (float)coordinates[done] + 0f;
            finite &= float.IsFinite(singles[done]);
        }
        singles[done..].Clear();
        if (!finite)
            throw TooLarge(coordinates);
    }

    /// <summary>Fills facets, each with the unit normal of its corners; 0, 0, 1 where it has no area.</summary>
    internal static void Fill(Span<byte> block, ReadOnlySpan<float> corners, ReadOnlySpan<int> triangles)
    {
        for (int i = 0; i + 2 < triangles.Length; i += 3)
        {
            Vector128<float> a = Vector128.Create(corners[(3 * triangles[i])..]),
                b = Vector128.Create(corners[(3 * triangles[i + 1])..]),
                c = Vector128.Create(corners[(3 * triangles[i + 2])..]);
            Normal(a, b, c).AsByte().CopyTo(block);
            a.AsByte().CopyTo(block[Corner..]);
            b.AsByte().CopyTo(block[(2 * Corner)..]);
            (c & Three).AsByte().CopyTo(block[(3 * Corner)..]);
            block = block[StlFacet.Size..];
        }
    }

    /// <summary>The unit normal of three corners; 0, 0, 1 where they span no area.</summary>
    // Inlined, so that the vectors stay in registers.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static Vector128<float> Normal(Vector128<float> a, Vector128<float> b, Vector128<float> c)
    {
        Vector256<double> from = Wide(a),
            u = Wide(b) - from,
            v = Wide(c) - from;
        // z, x, y of the product; each is a difference of the same two products as written out.
        Vector256<double> n = YZX(u * YZX(v) - YZX(u) * v),
            squares = n * n;
        double square = squares[0] + squares[1] + squares[2];
        if (!(square > 0))
            return Vector128.Create(0f, 0f, 1f, 0f);
        n *= Vector256.Create(1 / Math.Sqrt(square));
        return Vector256.Narrow(n, n).GetLower();
    }

    private static Vector256<double> Wide(Vector128<float> v) => Vector256.WidenLower(v.ToVector256Unsafe());

    private static Vector256<double> YZX(Vector256<double> v) => Vector256.Shuffle(v, Vector256.Create(1L, 2, 0, 3));

    private static ArgumentException TooLarge(ReadOnlySpan<double> coordinates)
    {
        int at = 0;
        while (float.IsFinite((float)coordinates[at]))
            at++;
        return new($"Vertex {at / 3} has a coordinate beyond 3.4e38 mm, the limit of an STL.", nameof(coordinates));
    }
}
