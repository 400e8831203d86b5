using CalibGeom.Meshes;

namespace CalibGeom.Solids;

/// <summary>From lofts to a closed mesh.</summary>
internal static class SolidMesher
{
    internal static TriangleMesh Mesh(Loft[] lofts) => throw new NotSupportedException($"{lofts.Length} lofts: the mesher is under way.");
}
