namespace CalibGeom.Features;

/// <summary>One thing to measure, count or feel on a printed test object.</summary>
/// <param name="Id">Stable id, such as <c>box1.outside.x</c>, <c>column7.diameter</c> or <c>joint1.fit</c>; may carry a
/// prefix <c>A1/</c>.</param>
/// <param name="Nominal">The designed value: mm for sizes, a whole number for counts, the designed clearance per side
/// in mm for a joint's fit.</param>
/// <param name="Unit"><c>mm</c>, <c>count</c>, <c>stage</c> (columnN.stood) or <c>fit</c> (jointN.fit).</param>
/// <param name="Axis"><c>x</c>, <c>y</c>, <c>z</c>, or empty where none applies.</param>
/// <param name="How">How to measure it, as a short instruction.</param>
public sealed record Feature(string Id, double Nominal, string Unit, string Axis, string How);
