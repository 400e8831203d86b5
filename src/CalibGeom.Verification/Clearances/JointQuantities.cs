namespace CalibGeom.Verification.Clearances;

/// <summary>A joint's clearances as quantities of one state of knowledge.</summary>
internal sealed record JointQuantities(JointDesign Design, IReadOnlyList<JointAxisQuantities> Axes)
{
    internal static JointQuantities Of(ModelFit fit, Knowledge known, JointDesign design) =>
        new(
            design,
            fit.Axes.Where(design.Axes.ContainsKey)
                .Select(axis =>
                {
                    (Face peg, Face pocket) = design.Axes[axis];
                    int Add(PrintTarget print) => known.Add(fit.System.Predict(fit.Clearance(peg, pocket, print)));
                    return new JointAxisQuantities(
                        axis,
                        peg,
                        pocket,
                        Add(PrintTarget.Read),
                        Add(PrintTarget.Mean),
                        Add(PrintTarget.Next)
                    );
                })
                .ToArray()
        );
}
