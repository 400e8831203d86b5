using CalibGeom.TestObjects.Parts;

namespace CalibGeom.TestObjects.Rules;

/// <summary>
/// Room between neighbouring columns, leaning or not, at heads and roots: resin must drain, and fallen columns must not
/// lean on others.
/// </summary>
internal sealed class ColumnRoomRule : IDesignRule
{
    private const double Least = 0.5,
        Good = 1.0;

    public IEnumerable<Finding> Check(ObjectPlan plan)
    {
        if (plan.Columns is not { Roots.Length: > 1 } block)
            return [];
        double room = Enumerable
            .Range(0, block.Roots.Length - 1)
            .Min(i => Enumerable.Range(i + 1, block.Roots.Length - i - 1).Min(j => Room(block, i, j)));
        return Judge.AtLeast(
            "column-room",
            "columns.pitch",
            "The smallest room between two columns with their heads",
            room,
            Least,
            Good,
            "mm",
            "Make columns.pitch larger or columns.headDiameter smaller; leaning columns are wider seen from above."
        );
    }

    private static double Room(ColumnBlock block, int i, int j)
    {
        double dx = block.Roots[i].X - block.Roots[j].X,
            dy = block.Roots[i].Y - block.Roots[j].Y;
        return Math.Sqrt(dx * dx + dy * dy) - block.Part(i).HalfExtent - block.Part(j).HalfExtent;
    }
}
