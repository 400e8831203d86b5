namespace CalibGeom.Verification.Clearances;

/// <summary>Peg and hole of one's own along one axis, numbered in a state of knowledge.</summary>
internal sealed record OwnFaces(Face Peg, Face Hole, int Clearance, int PegSize, int HoleSize)
{
    internal static OwnFaces Of(ModelFit fit, Knowledge all, string axis, double peg, double hole)
    {
        Face inner = FaceOf("peg", peg, false, axis),
            outer = FaceOf("hole", hole, true, axis);
        return new OwnFaces(
            inner,
            outer,
            all.Add(fit.System.Predict(fit.Clearance(inner, outer, PrintTarget.Next))),
            all.Add(fit.System.Predict(fit.Size(inner, PrintTarget.Next))),
            all.Add(fit.System.Predict(fit.Size(outer, PrintTarget.Next)))
        );
    }

    private static Face FaceOf(string what, double nominal, bool inside, string axis) =>
        new(FeatureId.Of("own", null, FormattableString.Invariant($"{what}.{nominal}"), axis), nominal, inside, axis);
}
