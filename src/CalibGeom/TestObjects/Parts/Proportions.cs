namespace CalibGeom.TestObjects.Parts;

/// <summary>Lengths of the test object that no spec changes, mm. docs/test-object.md says why each is so.</summary>
internal static class Proportions
{
    /// <summary>Slope of a box's taper, from vertical.</summary>
    internal const double TaperDegrees = 35;

    /// <summary>
    /// Corner radii, and how far the cut corner is cut off: outside round enough not to be what touches first in a
    /// pocket with a smaller radius, the cut twice the radius so that a thumb tells it from a round corner.
    /// </summary>
    internal const double OutsideRadius = 0.8;
    internal const double InsideRadius = 0.3;
    internal const double Key = 1.6;

    /// <summary>
    /// Neck of a loose box: it breaks at the notch, above a wider foot, so that the stub stays on the plinth. The
    /// waist of the box that stays is a share of its width: wide enough to be pushed, free enough to shrink.
    /// </summary>
    internal const double NeckFoot = 2.5;
    internal const double Notch = 1.8;
    internal const double NeckHeight = 0.5;
    internal const double WaistShare = 0.6;

    /// <summary>Lowest place of a gauge band above the plinth: no base layers, no squeeze down there.</summary>
    internal const double BandAbovePlinth = 3.0;

    /// <summary>
    /// Bevel of a rim: the smaller box finds its pocket, and burrs of the rim stay off the gauge band.
    /// </summary>
    internal const double LeadInHeight = 0.5;
    internal const double LeadInWidth = 0.3;

    /// <summary>
    /// How far above the pocket's floor the taper of a seated box ends, as a share of the gauge band, and at least;
    /// more when the wall beside the well asks for it.
    /// </summary>
    internal const double SeatShare = 0.4;
    internal const double SeatHeight = 1.2;

    /// <summary>
    /// Share of the pocket's width that the well of box 1 takes, about what a seated box would ask for: the floor round
    /// it is then as wide as in the others.
    /// </summary>
    internal const double WellShare = 0.54;

    /// <summary>Room below the foot of a seated box.</summary>
    internal const double WellRoom = 0.3;

    /// <summary>Wall beside the well: it holds when the box is snapped off.</summary>
    internal const double WellWall = 1.0;

    /// <summary>Floor below the well of the box that stays, and height of the tab's bar above the plinth.</summary>
    internal const double FloorThickness = 0.8;

    /// <summary>
    /// A vent as wide as resin needs to run out, and as narrow as its level roof bridges without sagging.
    /// </summary>
    internal const double VentWidth = 1.5;
    internal const double VentHeight = 1.2;

    /// <summary>
    /// The flare at a column's root, on every side, and how thick its head is: the root must not be what breaks, the
    /// head not what bends.
    /// </summary>
    internal const double ColumnFlare = 0.3;
    internal const double ColumnFlareHeight = 0.5;
    internal const double HeadThickness = 0.5;

    /// <summary>
    /// Posts of the spans: as stiff as the walls of a box, faces wider than a jaw, measured 3 mm up and so twice as
    /// high; the chamfer takes the burr of the top edge.
    /// </summary>
    internal const double PostThickness = 2.5;
    internal const double PostWidth = 4.0;
    internal const double PostHeight = 6.3;
    internal const double PostChamfer = 0.3;

    /// <summary>
    /// Tunnels as wide and as deep as an eye sees through and a roof bridges; the walls between them as other walls,
    /// the roof thicker than any print-through, the floor above all base layers.
    /// </summary>
    internal const double TunnelWidth = 1.5;
    internal const double TunnelDepth = 1.5;
    internal const double TunnelWall = 0.8;
    internal const double TunnelRoof = 1.2;
    internal const double TunnelFloorAbovePlate = 4.0;

    /// <summary>
    /// Height of the tunnels' floor above the plinth, mm: a line through a tunnel passes over the plinth on either
    /// side.
    /// </summary>
    internal const double TunnelFloorThickness = 3.0;

    /// <summary>
    /// How much wider than the comb its sight lanes are, on each side, and how long, mm: longer than any plinth.
    /// </summary>
    internal const double SightMargin = 2.0;
    internal const double SightLength = 400;

    /// <summary>
    /// Opening of the bridge: nearly as wide as a level roof spans without sagging, which takes the thin ends of a
    /// caliper's jaws, and high enough for one of them; posts stiffer than other walls, and a beam that jaws lie on.
    /// </summary>
    internal const double BridgeOpening = 2.8;
    internal const double BridgeOpeningHeight = 5.0;
    internal const double BridgePost = 1.7;
    internal const double BridgeDepth = 3.0;

    /// <summary>
    /// Slots of the tab: a little wider and deeper than tunnels, since the lowest is a layer or two high.
    /// </summary>
    internal const double TabSlotWidth = 2.0;
    internal const double TabSide = 1.2;
    internal const double TabDepth = 2.0;

    /// <summary>From the plinth to the tab, mm: light along the edge passes the plinth's side.</summary>
    internal const double TabGap = 1.6;

    /// <summary>The post that carries the bar stands on the plinth, a chamfer's width from its edge.</summary>
    internal const double TabPostInset = 0.3;
    internal const double TabPostDepth = 2.0;

    /// <summary>
    /// Width and height of the bar that holds the tab, mm: its root, 3 mm wide and 1.6 mm high, bears about 1.5 times
    /// what the root of a bar 5 mm wide and 1 mm high does (section moduli b h^2 / 6).
    /// </summary>
    internal const double TabBarWidth = 3.0;
    internal const double TabBar = 1.6;

    /// <summary>What closes the tab above its highest slot.</summary>
    internal const double TabCap = 0.5;

    /// <summary>
    /// What the plinth keeps outside all that stands on it, and its corners: nothing sharp under a scraper.
    /// </summary>
    internal const double PlinthMargin = 1.25;
    internal const double PlinthRadius = 2.0;
    internal const double PlinthCut = 1.8;

    /// <summary>The pad takes both jaws of a caliper, twice as wide as one and as deep as one is wide.</summary>
    internal const double PadWidth = 6.0;
    internal const double PadDepth = 3.0;

    /// <summary>The thin end of the wedge below a tilted plinth: still some layers thick.</summary>
    internal const double WedgeLeast = 0.5;

    /// <summary>As large as two letters.</summary>
    internal const double ArrowLength = 4.0;
    internal const double ArrowWidth = 2.4;

    /// <summary>
    /// How far a caliper's outside jaw reaches beyond the face it touches, and how wide it is along the face.
    /// </summary>
    internal const double JawDepth = 4.0;
    internal const double JawWidth = 3.0;

    /// <summary>How long an outside jaw is: nothing stands in front of what it reaches round.</summary>
    internal const double JawLength = 40;

    /// <summary>A raised stroke nearer than this lifts the jaw or the depth rod beside it.</summary>
    internal const double LabelToLane = 6.0;

    internal static readonly double TaperTangent = Math.Tan(TaperDegrees * Math.PI / 180);
}
