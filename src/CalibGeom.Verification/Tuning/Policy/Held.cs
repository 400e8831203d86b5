namespace CalibGeom.Verification.Tuning.Policy;

/// <summary>Settings that are left as they are.</summary>
[Flags]
public enum Held
{
    /// <summary>None.</summary>
    None = 0,

    /// <summary>Exposure.</summary>
    Time = 1,

    /// <summary>Rest.</summary>
    Rest = 2,

    /// <summary>Edge offset.</summary>
    Offset = 4,
}
