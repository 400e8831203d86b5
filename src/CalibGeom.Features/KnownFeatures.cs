namespace CalibGeom.Features;

/// <summary>The words that ids of our own parts are made of, each spelt once.</summary>
public static class KnownFeatures
{
    /// <summary>A box of the nest.</summary>
    public const string Box = "box";

    /// <summary>A joint of two boxes: joint 1 lies between box 1 and box 2.</summary>
    public const string Joint = "joint";

    /// <summary>A column.</summary>
    public const string Column = "column";

    /// <summary>One tunnel of the slot comb.</summary>
    public const string Slot = "slot";

    /// <summary>A pair of posts.</summary>
    public const string Span = "span";

    /// <summary>The plinth.</summary>
    public const string Plinth = "plinth";

    /// <summary>A gauge block or pin, read to learn an instrument's bias: <c>reference.outside.10</c>.</summary>
    public const string Reference = "reference";

    /// <summary>Between outer faces.</summary>
    public const string Outside = "outside";

    /// <summary>Between inner faces.</summary>
    public const string Inside = "inside";

    /// <summary>Along Z.</summary>
    public const string Height = "height";

    /// <summary>Of something round.</summary>
    public const string Diameter = "diameter";

    /// <summary>The last stage at which something stood.</summary>
    public const string Stood = "stood";

    /// <summary>How many stand whole.</summary>
    public const string Standing = "standing";

    /// <summary>How many are open.</summary>
    public const string Open = "open";

    /// <summary>How two things go together.</summary>
    public const string Fit = "fit";

    /// <summary>The squeeze tab and each of its slots.</summary>
    public const string Squeeze = "squeeze";

    /// <summary>A beam over two posts.</summary>
    public const string Bridge = "bridge";

    /// <summary>How many tunnels of the slot comb are open.</summary>
    public static FeatureId SlotsOpen { get; } = FeatureId.Of("slots", null, Open);

    /// <summary>How many slots of the squeeze tab are open.</summary>
    public static FeatureId SqueezeOpen { get; } = FeatureId.Of(Squeeze, null, Open);

    /// <summary>The plinth's thickness.</summary>
    public static FeatureId PlinthThickness { get; } = FeatureId.Of(Plinth, null, "thickness");

    /// <summary>
    /// The thickness of the beam of a bridge: what it is above its design is print-through, read with a caliper.
    /// </summary>
    public static FeatureId BridgeThickness { get; } = FeatureId.Of(Bridge, null, "thickness");

    /// <summary>The height of a slot of the squeeze tab.</summary>
    /// <param name="slot">Its number, from 1 at the plate.</param>
    public static FeatureId SqueezeHeight(int slot) => FeatureId.Of(Squeeze, slot, Height);

    /// <summary>A box's outside width.</summary>
    /// <param name="box">Its number.</param>
    /// <param name="axis"><c>x</c> or <c>y</c>.</param>
    public static FeatureId BoxOutside(int box, string axis) => FeatureId.Of(Box, box, Outside, axis);

    /// <summary>A box's inside width.</summary>
    /// <param name="box">Its number.</param>
    /// <param name="axis"><c>x</c> or <c>y</c>.</param>
    public static FeatureId BoxInside(int box, string axis) => FeatureId.Of(Box, box, Inside, axis);

    /// <summary>A box's height.</summary>
    /// <param name="box">Its number.</param>
    public static FeatureId BoxHeight(int box) => FeatureId.Of(Box, box, Height);

    /// <summary>The fit of a joint.</summary>
    /// <param name="joint">Its number.</param>
    public static FeatureId JointFit(int joint) => FeatureId.Of(Joint, joint, Fit);

    /// <summary>A column's diameter.</summary>
    /// <param name="column">Its number.</param>
    public static FeatureId ColumnDiameter(int column) => FeatureId.Of(Column, column, Diameter);

    /// <summary>The last stage at which a column stood.</summary>
    /// <param name="column">Its number.</param>
    public static FeatureId ColumnStood(int column) => FeatureId.Of(Column, column, Stood);

    /// <summary>The height of a tunnel of the slot comb.</summary>
    /// <param name="slot">Its number.</param>
    public static FeatureId SlotHeight(int slot) => FeatureId.Of(Slot, slot, Height);

    /// <summary>The length over a pair of posts.</summary>
    /// <param name="axis"><c>x</c> or <c>y</c>.</param>
    public static FeatureId SpanAlong(string axis) => FeatureId.Of(Span, null, "", axis);
}
