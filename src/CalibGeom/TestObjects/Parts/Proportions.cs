namespace CalibGeom.TestObjects.Parts;

/// <summary>Lengths of the test object that no spec changes, mm. docs/test-object.md says why each is so.</summary>
internal static class Proportions
{
    /// <summary>Slope of a box's taper, from vertical.</summary>
    internal const double TaperDegrees = 35;

    internal const double OutsideRadius = 0.8;
    internal const double InsideRadius = 0.3;
    internal const double Key = 1.6;

    internal const double NeckFoot = 2.5;
    internal const double Notch = 1.8;
    internal const double NeckHeight = 0.5;
    internal const double WaistShare = 0.6;

    /// <summary>Lowest place of a gauge band above the plinth: no base layers, no squeeze down there.</summary>
    internal const double BandAbovePlinth = 3.0;

    internal const double LeadInHeight = 0.5;
    internal const double LeadInWidth = 0.3;

    /// <summary>
    /// How far above the pocket's floor the taper of a seated box ends, as a share of the gauge band, and at least;
    /// more when the wall beside the well asks for it.
    /// </summary>
    internal const double SeatShare = 0.4;
    internal const double SeatHeight = 1.2;

    /// <summary>Share of the pocket's width that the well of box 1 takes.</summary>
    internal const double WellShare = 0.54;

    /// <summary>Room below the foot of a seated box.</summary>
    internal const double WellRoom = 0.3;
    internal const double WellWall = 1.0;
    internal const double FloorThickness = 0.8;

    internal const double VentWidth = 1.5;
    internal const double VentHeight = 1.2;

    internal const double ColumnFlare = 0.3;
    internal const double ColumnFlareHeight = 0.5;
    internal const double HeadThickness = 0.5;

    internal const double PostThickness = 2.5;
    internal const double PostWidth = 4.0;
    internal const double PostHeight = 6.3;
    internal const double PostChamfer = 0.3;

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

    internal const double TabSlotWidth = 2.0;
    internal const double TabSide = 1.2;
    internal const double TabDepth = 2.0;

    /// <summary>From the plinth to the tab, mm: light along the edge passes the plinth's side.</summary>
    internal const double TabGap = 1.6;
    internal const double TabPostInset = 0.3;
    internal const double TabPostDepth = 2.0;

    /// <summary>
    /// Width and height of the bar that holds the tab, mm: its root, 3 mm wide and 1.6 mm high, bears about 1.5 times
    /// what the root of a bar 5 mm wide and 1 mm high does (section moduli b h^2 / 6).
    /// </summary>
    internal const double TabBarWidth = 3.0;
    internal const double TabBar = 1.6;
    internal const double TabCap = 0.5;

    internal const double PlinthMargin = 1.25;
    internal const double PlinthRadius = 2.0;
    internal const double PlinthCut = 1.8;
    internal const double PadWidth = 6.0;
    internal const double PadDepth = 3.0;
    internal const double WedgeLeast = 0.5;

    internal const double ArrowLength = 4.0;
    internal const double ArrowWidth = 2.4;

    /// <summary>
    /// How far a caliper's outside jaw reaches beyond the face it touches, and how wide it is along the face.
    /// </summary>
    internal const double JawDepth = 4.0;
    internal const double JawWidth = 3.0;
    internal const double LabelToLane = 6.0;

    internal static readonly double TaperTangent = Math.Tan(TaperDegrees * Math.PI / 180);
}
