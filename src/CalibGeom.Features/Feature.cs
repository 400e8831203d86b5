using CalibGeom.Features.Files;

namespace CalibGeom.Features;

/// <summary>
/// One thing to measure, count or feel on a printed test object, with all that measurement needs to know of it.
/// Immutable, compares by value.
/// </summary>
public sealed record Feature
{
    /// <summary>
    /// A feature. How it answers to growth and when it is measured follow from its id and unit unless they are set.
    /// </summary>
    /// <param name="id">Its id.</param>
    /// <param name="nominal">The designed value; see <see cref="Nominal"/>.</param>
    /// <param name="unit"><c>mm</c>, <c>count</c>, <c>stage</c> or <c>fit</c>.</param>
    /// <param name="axis"><c>x</c>, <c>y</c>, <c>z</c>, or empty where none applies.</param>
    /// <param name="how">How to measure it, as a short instruction; it does not begin as a formula does.</param>
    /// <exception cref="ArgumentException">The instruction begins with =, +, - or @.</exception>
    public Feature(FeatureId id, double nominal, string unit, string axis, string how)
    {
        ArgumentNullException.ThrowIfNull(id);
        ArgumentNullException.ThrowIfNull(unit);
        ArgumentNullException.ThrowIfNull(axis);
        ArgumentNullException.ThrowIfNull(how);
        if (CsvText.BeginsAsFormula(how))
            throw new ArgumentException(FeatureCheck.FormulaProblem(how), nameof(how));
        Id = id;
        Nominal = nominal;
        Unit = unit;
        Axis = axis;
        How = how;
        Faces = FeatureHabits.FacesOf(id);
        Step = FeatureHabits.StepOf(id, unit, axis, Faces);
    }

    /// <summary>A feature whose id is a text.</summary>
    /// <param name="id">Its id, such as <c>box1.outside.x</c>.</param>
    /// <param name="nominal">The designed value; see <see cref="Nominal"/>.</param>
    /// <param name="unit"><c>mm</c>, <c>count</c>, <c>stage</c> or <c>fit</c>.</param>
    /// <param name="axis"><c>x</c>, <c>y</c>, <c>z</c>, or empty where none applies.</param>
    /// <param name="how">How to measure it, as a short instruction.</param>
    /// <exception cref="ArgumentException">The text is no id, or the instruction begins with =, +, - or @.</exception>
    public Feature(string id, double nominal, string unit, string axis, string how)
        : this(FeatureId.Parse(id), nominal, unit, axis, how) { }

    /// <summary>Stable id, such as <c>box1.outside.x</c>; may carry the label of a coupon.</summary>
    public FeatureId Id { get; init; }

    /// <summary>
    /// The designed value: mm for sizes, a whole number for counts, the tighter designed clearance per side in mm for a
    /// fit, the number of the last stage for a column.
    /// </summary>
    public double Nominal { get; }

    /// <summary><c>mm</c>, <c>count</c>, <c>stage</c> (columnN.stood) or <c>fit</c> (jointN.fit).</summary>
    public string Unit { get; }

    /// <summary><c>x</c>, <c>y</c>, <c>z</c>, or empty where none applies.</summary>
    public string Axis { get; }

    /// <summary>How to measure it, as a short instruction.</summary>
    public string How { get; }

    /// <summary>How the size answers to growth.</summary>
    public FaceKind Faces { get; init; }

    /// <summary>When it is measured.</summary>
    public WorkStep Step { get; init; }

    /// <summary>What goes into what, for a fit: one mate an axis; empty for anything else.</summary>
    public ValueList<Mate> Mates { get; init; } = [];

    /// <summary>
    /// The diameter in mm of the head that a column carries; null where there is none or it is not known.
    /// </summary>
    public double? HeadDiameter { get; init; }

    /// <summary>
    /// The heights in mm of what a count counts, in the order in which they stand on the object; empty for anything
    /// else and where they are not known.
    /// </summary>
    public ValueList<double> Openings { get; init; } = [];

    /// <summary>The same feature with other faces, measured when such faces are.</summary>
    /// <param name="faces">How the size answers to growth.</param>
    public Feature With(FaceKind faces) =>
        this with
        {
            Faces = faces,
            Step = FeatureHabits.StepOf(Id, Unit, Axis, faces),
        };

    /// <summary>Where it stands in a block of rows, such as the columns; null where it stands in none.</summary>
    public GridSpot? Spot { get; init; }

    /// <summary>The same feature of a coupon, with its mates.</summary>
    /// <param name="coupon">The coupon's label; empty for none.</param>
    /// <exception cref="ArgumentException">The label makes no id.</exception>
    public Feature On(string coupon) =>
        this with
        {
            Id = Id.On(coupon),
            Mates = Mates.Select(m => m with { Inner = m.Inner.On(coupon), Outer = m.Outer.On(coupon) }).ToValueList(),
        };

    /// <summary>
    /// Head area over column area: what the film pulls with, against what holds. 1 without a head, or where it is not
    /// known.
    /// </summary>
    public double LoadRatio => HeadDiameter is { } head ? head / Nominal * (head / Nominal) : 1;
}
