namespace CalibGeom.Verification.Clearances;

/// <summary>
/// A fit as it was designed, of boxes or of a part of one's own: what goes into what, along X and Y. Either axis may be
/// missing.
/// </summary>
internal sealed record JointDesign(FeatureId Fit, IReadOnlyDictionary<string, (Face Peg, Face Pocket)> Axes)
{
    internal static IReadOnlyList<JointDesign> All(FeatureTable table)
    {
        var joints = new List<JointDesign>();
        foreach (Feature fit in table)
        {
            var axes = new Dictionary<string, (Face, Face)>(StringComparer.Ordinal);
            foreach (Mate mate in fit.Mates.Where(m => m.Axis is "x" or "y"))
                if (Find(table, mate.Inner) is { } peg && Find(table, mate.Outer) is { } pocket)
                    axes[mate.Axis] = (peg, pocket);
            if (axes.Count > 0)
                joints.Add(new JointDesign(fit.Id, axes));
        }
        return joints;
    }

    private static Face? Find(FeatureTable table, FeatureId id) => table.Find(id) is { } f ? Face.Of(f) : null;
}
