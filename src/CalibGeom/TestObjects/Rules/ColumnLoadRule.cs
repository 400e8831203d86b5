using CalibGeom.TestObjects.Parts;

namespace CalibGeom.TestObjects.Rules;

/// <summary>
/// Columns that could stand: the pull over the head against the column's section, and the length against the diameter.
/// </summary>
internal sealed class ColumnLoadRule : IDesignRule
{
    private const double MostLoad = 64,
        MostSlender = 40;

    public IEnumerable<Finding> Check(ObjectPlan plan)
    {
        if (plan.Spec.Columns is not { } columns)
            return [];
        double thinnest = columns.Diameters.Min();
        double load = RoundBar.Area(columns.HeadDiameter) / RoundBar.Area(thinnest);
        return
        [
            .. Judge.AtMost(
                "column-load",
                "columns.headDiameter",
                "The load ratio of the thinnest column",
                load,
                MostLoad,
                "",
                "Make columns.headDiameter smaller or start with a thicker column; this one is lost whatever "
                    + "the exposure."
            ),
            .. Judge.AtMost(
                "column-slender",
                "columns.height",
                "The height of the thinnest column over its diameter",
                columns.Height / thinnest,
                MostSlender,
                "",
                "Make columns.height lower or start with a thicker column; this one bends in the resin."
            ),
        ];
    }
}
