using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace CalibGeom.Formats.Stl;

/// <summary>
/// One 50-byte record of a binary STL as it lies in the file: the normal, three corners in mm and the attribute word. A
/// span of these can be seen as bytes with <see cref="MemoryMarshal.AsBytes{T}(ReadOnlySpan{T})"/> and written
/// elsewhere unchanged.
/// </summary>
/// <param name="NormalX">x of the normal as stored; this library never trusts it.</param>
/// <param name="NormalY">y of the normal.</param>
/// <param name="NormalZ">z of the normal.</param>
/// <param name="AX">x of the first corner, mm.</param>
/// <param name="AY">y of the first corner, mm.</param>
/// <param name="AZ">z of the first corner, mm.</param>
/// <param name="BX">x of the second corner, mm.</param>
/// <param name="BY">y of the second corner, mm.</param>
/// <param name="BZ">z of the second corner, mm.</param>
/// <param name="CX">x of the third corner, mm.</param>
/// <param name="CY">y of the third corner, mm.</param>
/// <param name="CZ">z of the third corner, mm.</param>
/// <param name="Attribute">The attribute word; 0 in files of this library.</param>
[StructLayout(LayoutKind.Sequential, Pack = 1)]
public readonly record struct StlFacet(
    float NormalX,
    float NormalY,
    float NormalZ,
    float AX,
    float AY,
    float AZ,
    float BX,
    float BY,
    float BZ,
    float CX,
    float CY,
    float CZ,
    ushort Attribute
)
{
    /// <summary>The size of a record in bytes: 50.</summary>
    public const int Size = 50;

    /// <summary>Whether all three corners are finite numbers.</summary>
    public bool HasFiniteCorners =>
        float.IsFinite(AX)
        && float.IsFinite(AY)
        && float.IsFinite(AZ)
        && float.IsFinite(BX)
        && float.IsFinite(BY)
        && float.IsFinite(BZ)
        && float.IsFinite(CX)
        && float.IsFinite(CY)
        && float.IsFinite(CZ);

    /// <summary>Whether the stored normal consists of finite numbers.</summary>
    public bool HasFiniteNormal => float.IsFinite(NormalX) && float.IsFinite(NormalY) && float.IsFinite(NormalZ);

    /// <summary>A record with the unit normal of its corners; a facet without area gets 0, 0, 1.</summary>
    internal static StlFacet Of(
        float ax,
        float ay,
        float az,
        float bx,
        float by,
        float bz,
        float cx,
        float cy,
        float cz
    )
    {
        Vector128<float> normal = StlBlock.Normal(
            Vector128.Create(ax, ay, az, 0),
            Vector128.Create(bx, by, bz, 0),
            Vector128.Create(cx, cy, cz, 0)
        );
        return new(normal[0], normal[1], normal[2], ax, ay, az, bx, by, bz, cx, cy, cz, 0);
    }
}
