namespace CalibGeom.TestObjects.Parts;

/// <summary>What a lane is kept free for.</summary>
public enum LaneKind
{
    /// <summary>A caliper's jaw beside a gauge face: no tall part in it, no low one near it.</summary>
    Caliper,

    /// <summary>
    /// Light that is to be seen through an opening, or a tool that labels do not hinder: no tall part in it.
    /// </summary>
    Open,
}
