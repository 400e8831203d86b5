using System.Text.Json.Serialization;
using CalibGeom.TestObjects.Parts;
using CalibGeom.TestObjects.Parts.Bridge;
using CalibGeom.TestObjects.Parts.Columns;
using CalibGeom.TestObjects.Parts.Labels;
using CalibGeom.TestObjects.Parts.Nest;
using CalibGeom.TestObjects.Parts.PinRow;
using CalibGeom.TestObjects.Parts.Plinth;
using CalibGeom.TestObjects.Parts.SlotComb;
using CalibGeom.TestObjects.Parts.Spans;
using CalibGeom.TestObjects.Parts.SqueezeTab;
using CalibGeom.TestObjects.Parts.WallFan;

namespace CalibGeom.TestObjects.Specs;

/// <summary>
/// What a test object is to be: groups of parameters, every one with a default; together the defaults are the preset
/// <c>standard</c>. A group set to null is left out of the object; the plinth and the tilt cannot be left out.
/// Immutable; every value is checked when it is set, so that a spec that exists is in range (whether it can be printed
/// is for the design rules). Compares by value.
/// </summary>
public sealed record TestObjectSpec
{
    /// <summary>
    /// What is written on the object, such as the resin's name: at most 40 characters out of A-Z, a-z (drawn as
    /// capitals), 0-9, space, + - . , / : # % and the micro sign. Default empty: nothing is written.
    /// </summary>
    /// <exception cref="ArgumentException">Too long, or with a character that cannot be drawn.</exception>
    public string Title
    {
        get;
        init => field = SpecParameters.Title.Require(value);
    } = "";

    /// <summary>How the object will be printed, or null when that is not known. Default null.</summary>
    public ProcessSpec? Process { get; init; }

    /// <summary>The plate that everything stands on.</summary>
    /// <exception cref="ArgumentNullException">Null.</exception>
    /// <exception cref="ArgumentException">The chamfer is not lower than the plinth.</exception>
    public PlinthSpec Plinth
    {
        get;
        init => field = Check(value);
    } = new();

    /// <summary>The boxes that fit into each other, or null.</summary>
    /// <exception cref="ArgumentException">The number of clearances does not match the boxes.</exception>
    public NestSpec? Nest
    {
        get;
        init => field = Check(value);
    } = new();

    /// <summary>The long outside faces, or null.</summary>
    public SpansSpec? Spans { get; init; } = new();

    /// <summary>The columns, or null.</summary>
    public ColumnsSpec? Columns { get; init; } = new();

    /// <summary>The slot comb, or null.</summary>
    public SlotsSpec? Slots { get; init; } = new();

    /// <summary>
    /// The bridge, or null. Default null. The canonical form leaves it out where it is null, so that objects without
    /// one keep the digests that they had before there were bridges.
    /// </summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public BridgeSpec? Bridge { get; init; }

    /// <summary>The squeeze tab, or null.</summary>
    public SqueezeSpec? Squeeze { get; init; } = new();

    /// <summary>The row of pins and holes, or null. Default null.</summary>
    public PinSpec? Pins { get; init; }

    /// <summary>The thin walls, or null. Default null.</summary>
    public WallSpec? Walls { get; init; }

    /// <summary>The labels, or null.</summary>
    public LabelsSpec? Labels { get; init; } = new();

    /// <summary>How the whole object is tilted.</summary>
    /// <exception cref="ArgumentNullException">Null.</exception>
    public TiltSpec Tilt
    {
        get;
        init =>
            field =
                value
                ?? throw new ArgumentNullException(nameof(Tilt), "tilt cannot be left out; angle 0 stands level.");
    } = new();

    /// <summary>
    /// Parts that a developer adds to those of the groups; they stand on the plinth like the others, and count in the
    /// digest. JSON does not hold them. Default none.
    /// </summary>
    /// <exception cref="ArgumentNullException">Null.</exception>
    [JsonIgnore]
    public IReadOnlyList<ITestPart> OwnParts
    {
        get;
        init =>
            field =
                value ?? throw new ArgumentNullException(nameof(OwnParts), "own parts cannot be null; leave them out.");
    } = [];

    private static NestSpec? Check(NestSpec? nest) =>
        nest?.Problem is { } problem ? throw new ArgumentException(problem, nameof(Nest)) : nest;

    private static PlinthSpec Check(PlinthSpec? plinth)
    {
        if (plinth is null)
            throw new ArgumentNullException(nameof(Plinth), "plinth cannot be left out.");
        return plinth.Problem is { } problem ? throw new ArgumentException(problem, nameof(Plinth)) : plinth;
    }
}
