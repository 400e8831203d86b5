namespace CalibGeom.Formats;

/// <summary>A mesh file format.</summary>
public enum MeshFormat
{
    /// <summary>Binary STL.</summary>
    StlBinary,

    /// <summary>ASCII STL.</summary>
    StlAscii,

    /// <summary>Wavefront OBJ.</summary>
    Obj,

    /// <summary>3MF, core specification.</summary>
    ThreeMf,
}
