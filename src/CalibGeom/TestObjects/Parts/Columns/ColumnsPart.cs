using CalibGeom.Meshes;
using CalibGeom.Planar;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.TestObjects.Parts.Columns;

/// <summary>The block of columns with rows of one length; other lengths are its other ways to stand.</summary>
internal sealed class ColumnsPart(ColumnsSpec spec, int perRow, PixelGrid pixels) : ITestPart
{
    /// <summary>Gauge lines round half a turn: a caliper is turned about a column to find its diameter.</summary>
    private const int LinesRound = 8;

    private readonly ColumnBlock block = new(spec, perRow, pixels);

    public string Name => "columns";

    public string Label =>
        spec.Diameters.Count > 1
            ? FormattableString.Invariant($"{spec.Diameters[0]:0.###}-{spec.Diameters[^1]:0.###}")
            : FormattableString.Invariant($"{spec.Diameters[0]:0.###}");

    public IReadOnlyList<ITestPart> OtherWays { get; private init; } = [];

    /// <summary>The block seen from above, with the room that leaning columns take.</summary>
    public PartFootprint Footprint
    {
        get
        {
            double half = Enumerable.Range(0, block.Roots.Length).Max(i => block.Shape(i).HalfExtent);
            (double driftX, double driftY) = block.Shape(0).Drift(spec.Height);
            Rect roots = new Rect(
                block.Roots.Min(r => r.X),
                block.Roots.Min(r => r.Y),
                block.Roots.Max(r => r.X),
                block.Roots.Max(r => r.Y)
            ).Grow(half);
            return new PartFootprint([roots.Join(roots.Move(driftX, driftY))], []);
        }
    }

    /// <summary>The columns of an object; none without the group.</summary>
    internal static IEnumerable<ITestPart> Parts(TestObjectSpec spec, PixelGrid pixels)
    {
        if (spec.Columns is not { } columns)
            return [];
        IReadOnlyList<int> lengths = ColumnBlock.RowLengths(columns.Diameters.Count * columns.Copies);
        return
        [
            new ColumnsPart(columns, lengths[0], pixels)
            {
                OtherWays = [.. lengths.Skip(1).Select(m => new ColumnsPart(columns, m, pixels))],
            },
        ];
    }

    public IEnumerable<PartBody> Bodies(PartPlace place) =>
        Enumerable
            .Range(0, block.Roots.Length)
            .Select(i => new PartBody(
                KnownFeatures.ColumnDiameter(i + 1).Item,
                block.Shape(i).Lofts(Root(i, place), place.BaseZ)
            ));

    public IEnumerable<PartFeature> Features(PartPlace place)
    {
        IReadOnlyList<ColumnPlan> columns = Plans(place);
        foreach (ColumnPlan column in columns)
            yield return PartFeature
                .Size("", $"outside jaws or microscope, half way up, {Where(column)}", Lines(column, place))
                .With(f =>
                    f with
                    {
                        HeadDiameter = block.Shape(column.Number - 1).HasHead ? spec.HeadDiameter : null,
                        Spot = new GridSpot(column.Row, column.Place),
                    }
                );
        foreach (ColumnPlan column in columns)
            yield return new PartFeature(
                new Feature(
                    KnownFeatures.ColumnStood(column.Number),
                    3,
                    "stage",
                    "",
                    $"the last stage at which it stood whole: lost, plate, wash or cure; {Where(column)}"
                )
                {
                    Spot = new GridSpot(column.Row, column.Place),
                },
                []
            );
    }

    public IEnumerable<Finding> Check(PartPlace place) => ColumnRules.Check(spec, block, place.Spec.Process);

    /// <summary>The columns as they are made, by number.</summary>
    internal IReadOnlyList<ColumnPlan> Plans(PartPlace place) =>
        [
            .. Enumerable
                .Range(0, block.Roots.Length)
                .Select(i => new ColumnPlan
                {
                    Number = i + 1,
                    Diameter = block.Diameter(i),
                    LoadRatio = LoadRatio(i),
                    X = Root(i, place).XMillimetres,
                    Y = Root(i, place).YMillimetres,
                    Row = block.Place[i] / block.PerRow + 1,
                    Place = block.Place[i] % block.PerRow + 1,
                }),
        ];

    private GridPoint Root(int index, PartPlace place) =>
        GridPoint.FromMillimetres(place.X + block.Roots[index].X, place.Y + block.Roots[index].Y);

    private double LoadRatio(int index)
    {
        if (!block.Shape(index).HasHead)
            return 1;
        double ratio = spec.HeadDiameter / block.Diameter(index);
        return ratio * ratio;
    }

    private static string Where(ColumnPlan column) =>
        FormattableString.Invariant(
            $"row {column.Row} from the front, place {column.Place} from the left ({column.Diameter} mm)"
        );

    /// <summary>Half way up, square to the axis, evenly round it.</summary>
    private GaugeLine[] Lines(ColumnPlan column, PartPlace place)
    {
        double half = spec.Height / 2;
        (double dx, double dy) = block.Shape(column.Number - 1).Drift(half);
        Vector3D axis = Unit(new Vector3D(dx, dy, half)),
            level = Unit(new Vector3D(axis.X == 0 && axis.Y == 0 ? 1 : -axis.Y, axis.X, 0)),
            other = Vector3D.Cross(axis, level),
            middle = new(column.X + dx, column.Y + dy, place.BaseZ + half);
        return
        [
            .. Enumerable
                .Range(0, LinesRound)
                .Select(k =>
                {
                    (double sin, double cos) = Math.SinCos(Math.PI * k / LinesRound);
                    return GaugeLine.Outside(
                        KnownFeatures.ColumnDiameter(column.Number),
                        middle,
                        level * cos + other * sin,
                        column.Diameter,
                        column.Diameter
                    ) with
                    {
                        Round = true,
                    };
                }),
        ];
    }

    private static Vector3D Unit(Vector3D v) => v * (1 / v.Length);
}
