namespace CalibGeom.Verification.Clearances;

/// <summary>
/// A face that was left out: how far from what the others predict, and how probable that is by chance.
/// </summary>
internal sealed record GrossFace(ModelFace Face, double Distance, double U, double Probability)
{
    /// <summary>What the other faces predict of it, mm.</summary>
    internal double Predicted => Face.Group.Mean - Distance;
}
