using CalibGeom.TestObjects.Rules;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.TestObjects.Parts.Columns;

/// <summary>What must hold of the columns: order, room, load, slenderness, pixels.</summary>
internal static class ColumnRules
{
    /// <summary>Resin drains, and a fallen column does not lean on others.</summary>
    private const double LeastRoom = 0.5,
        GoodRoom = 1.0;

    /// <summary>
    /// Columns that could stand: (head/column diameter)^2 and height over diameter. Common practice, no source.
    /// </summary>
    private const double MostLoad = 64,
        MostSlender = 40;

    private const double LeastPixels = 2,
        GoodPixels = 3;

    internal static IEnumerable<Finding> Check(ColumnsSpec spec, ColumnBlock block, ProcessSpec? process)
    {
        double thinnest = spec.Diameters.Min();
        return
        [
            .. Judge.Ascending("columns.diameters", spec.Diameters),
            .. Room(block),
            .. Judge.AtMost(
                "column-load",
                "columns.headDiameter",
                "The load ratio of the thinnest column",
                RoundBar.Area(spec.HeadDiameter) / RoundBar.Area(thinnest),
                MostLoad,
                "",
                "Make columns.headDiameter smaller or start with a thicker column; this one is lost whatever "
                    + "the exposure."
            ),
            .. Judge.AtMost(
                "column-slender",
                "columns.height",
                "The height of the thinnest column over its diameter",
                spec.Height / thinnest,
                MostSlender,
                "",
                "Make columns.height lower or start with a thicker column; this one bends in the resin."
            ),
            .. process is null ? [] : OnPixels(spec, Math.Max(process.PixelPitch.X, process.PixelPitch.Y)),
        ];
    }

    private static IEnumerable<Finding> Room(ColumnBlock block)
    {
        if (block.Roots.Length < 2)
            return [];
        double room = Enumerable
            .Range(0, block.Roots.Length - 1)
            .Min(i => Enumerable.Range(i + 1, block.Roots.Length - i - 1).Min(j => Room(block, i, j)));
        return Judge.AtLeast(
            "column-room",
            "columns.pitch",
            "The smallest room between two columns with their heads",
            room,
            LeastRoom,
            GoodRoom,
            "mm",
            "Make columns.pitch larger or columns.headDiameter smaller; leaning columns are wider seen from above."
        );
    }

    private static double Room(ColumnBlock block, int i, int j)
    {
        double dx = block.Roots[i].X - block.Roots[j].X,
            dy = block.Roots[i].Y - block.Roots[j].Y;
        return Math.Sqrt(dx * dx + dy * dy) - block.Shape(i).HalfExtent - block.Shape(j).HalfExtent;
    }

    private static IEnumerable<Finding> OnPixels(ColumnsSpec spec, double coarser) =>
        [
            Judge.Note("pixels", "columns.diameters", $"In pixels, {SizeNotes.Counts(spec.Diameters, coarser)}."),
            .. Judge.AtLeast(
                "column-pixels",
                "columns.diameters",
                "The thinnest column",
                spec.Diameters.Min() / coarser,
                LeastPixels,
                GoodPixels,
                "pixels",
                "Start with a thicker column: fewer pixels do not make a round section."
            ),
        ];
}
