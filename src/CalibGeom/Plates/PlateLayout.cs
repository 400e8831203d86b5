using CalibGeom.Meshes;

namespace CalibGeom.Plates;

/// <summary>
/// A plate with production parts on it and the coupons placed beside them so far. A coupon is free where it and its gap
/// touch neither a part's shadow nor another coupon nor the margin; all such places are searched, unturned and turned
/// by 90 degrees. Parts are never changed. Not safe to share between threads.
/// </summary>
public sealed class PlateLayout
{
    /// <summary>
    /// Up to this many facets in all parts together, shadows are exact: 100,000. Above, they are cells of 1/2048 of the
    /// plate's longer side, every touched cell counting whole.
    /// </summary>
    public const int ExactLimit = 100_000;

    private readonly List<PlacedCoupon> coupons = [];
    private readonly List<PlanarTriangles> couponShadows = [];
    private readonly Dictionary<double, PlateShadow> shadows = [];

    /// <summary>Looks through the parts once.</summary>
    /// <param name="plate">The plate, in the coordinates of the parts.</param>
    /// <param name="parts">The parts, each once; none when coupons have the plate to themselves.</param>
    /// <param name="rules">What coupons keep to; the defaults when null.</param>
    /// <param name="progress">Told the share of the parts looked through, 0 to 1, now and then.</param>
    /// <param name="cancellation">Stops this look, and every later search and writing of this layout.</param>
    /// <exception cref="InputException">A part cannot be read.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public PlateLayout(
        Plate plate,
        IReadOnlyList<PlatePart> parts,
        PlacementRules? rules = null,
        IProgress<double>? progress = null,
        CancellationToken cancellation = default
    )
        : this(plate, parts, rules ?? new PlacementRules(), ExactLimit, progress, cancellation) { }

    /// <summary>A layout with another limit for exact shadows.</summary>
    internal PlateLayout(
        Plate plate,
        IReadOnlyList<PlatePart> parts,
        PlacementRules rules,
        int exactLimit,
        IProgress<double>? progress = null,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(plate);
        ArgumentNullException.ThrowIfNull(parts);
        (Plate, Parts, Rules, Cancellation) = (plate, parts, rules, cancellation);
        IsExact = parts.Sum(p => p.TriangleCount) <= exactLimit;
        (shadows[double.PositiveInfinity], Surveys) = PlateShadow.Survey(plate, parts, IsExact, progress, cancellation);
        PartBounds = parts.Count > 0 ? BoundsOf(Surveys) : MiddleOf(plate);
    }

    private PlateLayout(Plate plate, PlateLayout other)
    {
        (Plate, Parts, Rules, Surveys, PartBounds, IsExact, Cancellation) = (
            plate,
            other.Parts,
            other.Rules,
            other.Surveys,
            other.PartBounds,
            other.IsExact,
            other.Cancellation
        );
    }

    /// <summary>Stops searches and writing.</summary>
    internal CancellationToken Cancellation { get; }

    /// <summary>The plate.</summary>
    public Plate Plate { get; }

    /// <summary>The parts, as given.</summary>
    public IReadOnlyList<PlatePart> Parts { get; }

    /// <summary>What the look through each part told, in the same order.</summary>
    public IReadOnlyList<PartSurvey> Surveys { get; }

    /// <summary>What coupons keep to.</summary>
    public PlacementRules Rules { get; }

    /// <summary>The coupons placed so far.</summary>
    public IReadOnlyList<PlacedCoupon> Coupons => coupons;

    /// <summary>The box round all parts, mm; without parts the plate's middle at z = 0.</summary>
    public Box3D PartBounds { get; }

    /// <summary>Whether shadows are exact; see <see cref="ExactLimit"/>.</summary>
    public bool IsExact { get; }

    /// <summary>The height at which coupons stand, mm.</summary>
    public double BaseZ => Rules.StandAtZero ? 0 : PartBounds.Min.Z;

    /// <summary>
    /// The plate moved so that the middle of the box round all parts is its centre, for parts that a slicer will
    /// centre: everything then stays in the parts' own coordinates. Coupons placed before stay behind: the new layout
    /// has none, so place them on it.
    /// </summary>
    /// <exception cref="InputException">The parts lie too far from X = Y = 0 for a plate.</exception>
    public PlateLayout Centred()
    {
        try
        {
            return new PlateLayout(
                Plate with
                {
                    CentreX = (PartBounds.Min.X + PartBounds.Max.X) / 2,
                    CentreY = (PartBounds.Min.Y + PartBounds.Max.Y) / 2,
                },
                this
            );
        }
        catch (ArgumentException e)
        {
            throw InputException.Because(InputIds.Plate, e);
        }
    }

    /// <summary>
    /// What is worth saying about the parts: open surfaces, parts that float, reach below or beyond the plate, or are
    /// too high.
    /// </summary>
    public IReadOnlyList<Finding> Findings => PartFindings.Of(this);

    /// <summary>Places a coupon, when there is room for it.</summary>
    /// <param name="coupon">The coupon.</param>
    /// <param name="wish">Which of all free places to take.</param>
    /// <param name="label">Its label on this plate, such as <c>A1</c>; empty by default.</param>
    /// <returns>The placed coupon, now also in <see cref="Coupons"/>; null when there is no room.</returns>
    /// <exception cref="InputException">A part cannot be read.</exception>
    public PlacedCoupon? Place(Coupon coupon, PlacementWish wish, string label = "")
    {
        ArgumentNullException.ThrowIfNull(coupon);
        ArgumentNullException.ThrowIfNull(wish);
        ArgumentNullException.ThrowIfNull(label);
        if (!FitsHeight(coupon))
            return null;
        if (Search(coupon, Rules.Gap).Find(Turns(coupon), Goal(wish)) is not { } spot)
            return null;
        PlacedCoupon placed = At(coupon, label, spot);
        Add(placed);
        return placed;
    }

    /// <summary>
    /// Places several coupons, spread over the plate: one to the centre; two to opposite corners, three also to the
    /// centre; from four on the corners, the centre, then the points furthest from those before. Where that leaves no
    /// room for one of them, all are set in rows or in columns and then moved apart.
    /// </summary>
    /// <param name="labelled">The coupons with their labels, in this order; of one height. Their sizes may differ as
    /// their labels do.</param>
    /// <returns>The placed coupons; null, and nothing placed, when one of them finds no room in any of these
    /// ways.</returns>
    /// <exception cref="InputException">A part cannot be read.</exception>
    public IReadOnlyList<PlacedCoupon>? PlaceMap(IReadOnlyList<LabelledCoupon> labelled)
    {
        ArgumentNullException.ThrowIfNull(labelled);
        if (labelled.Any(l => !FitsHeight(l.Coupon)))
            return null;
        int before = coupons.Count;
        IReadOnlyList<(double X, double Y)> targets = MapTargets.Spread(Plate, labelled.Count);
        RoomGoal Wish(int i) => Goal(PlacementWish.Near(targets[i].X, targets[i].Y));
        Footprint[][] footprints = [.. labelled.Select(l => Turns(l.Coupon))];
        if (!PlaceAll(labelled, Wish, footprints))
        {
            if (!MapRows.Of(Plate, footprints).Any(way => PlaceAll(labelled, _ => way.Goal, way.Turns)))
                return null;
            Spread(before, Wish);
        }
        return coupons.Skip(before).ToArray();
    }

    /// <summary>Whether a map would find room, without placing it.</summary>
    /// <param name="labelled">The coupons with their labels, as for <see cref="PlaceMap"/>.</param>
    /// <exception cref="InputException">A part cannot be read.</exception>
    public bool HasRoomForMap(IReadOnlyList<LabelledCoupon> labelled)
    {
        ArgumentNullException.ThrowIfNull(labelled);
        int before = coupons.Count;
        bool room = PlaceMap(labelled) is not null;
        TakeBack(before);
        return room;
    }

    private bool PlaceAll(IReadOnlyList<LabelledCoupon> labelled, Func<int, RoomGoal> goal, Footprint[][] turns)
    {
        int before = coupons.Count;
        for (int i = 0; i < labelled.Count; i++)
        {
            (Coupon coupon, string label, _) = labelled[i];
            if (Search(coupon, Rules.Gap).Find(turns[i], goal(i)) is { } spot)
            {
                Add(At(coupon, label, spot));
                continue;
            }
            TakeBack(before);
            return false;
        }
        return true;
    }

    /// <summary>
    /// Moves coupons that stand close together to where they would rather be, as far as there is room.
    /// </summary>
    private void Spread(int first, Func<int, RoomGoal> goal)
    {
        for (int i = coupons.Count - 1; i >= first; i--)
        {
            PlacedCoupon placed = coupons[i];
            PlanarTriangles shadow = couponShadows[i];
            coupons.RemoveAt(i);
            couponShadows.RemoveAt(i);
            RoomSpot? spot = Search(placed.Coupon, Rules.Gap).Find(Turns(placed.Coupon), goal(i - first));
            PlacedCoupon moved = spot is null ? placed : At(placed.Coupon, placed.Label, spot);
            coupons.Insert(i, moved);
            couponShadows.Insert(i, spot is null ? shadow : ShadowOf(moved));
        }
    }

    private void TakeBack(int before)
    {
        coupons.RemoveRange(before, coupons.Count - before);
        couponShadows.RemoveRange(before, couponShadows.Count - before);
    }

    /// <summary>How much is missing for a coupon that found no room.</summary>
    /// <param name="coupon">The coupon.</param>
    /// <exception cref="InputException">A part cannot be read.</exception>
    public RoomShortage Explain(Coupon coupon)
    {
        ArgumentNullException.ThrowIfNull(coupon);
        Footprint[] whole = Turns(coupon);
        // No gap and no smaller footprint makes it lower.
        if (!FitsHeight(coupon))
            return new RoomShortage(
                whole[0].Width,
                whole[0].Depth,
                null,
                null,
                BaseZ + coupon.Bounds.Size.Z - Plate.Height
            );
        double? gap = RoomShortage.Widest(0.1, Rules.Gap, g => Search(coupon, g).Find(whole, AnyPlace()) is not null);
        double? scale = RoomShortage.Widest(
            0.02,
            1,
            s => Search(coupon, Rules.Gap).Find(whole.Select(f => f.Scaled(s)).ToArray(), AnyPlace()) is not null
        );
        return new RoomShortage(whole[0].Width, whole[0].Depth, gap, scale, null);
    }

    /// <summary>Whether a coupon would find room, without placing it.</summary>
    /// <param name="coupon">The coupon.</param>
    /// <exception cref="InputException">A part cannot be read.</exception>
    public bool HasRoomFor(Coupon coupon)
    {
        ArgumentNullException.ThrowIfNull(coupon);
        return FitsHeight(coupon) && Search(coupon, Rules.Gap).Find(Turns(coupon), AnyPlace()) is not null;
    }

    /// <summary>
    /// Parts whose surfaces touch or cross each other. Looks at every facet of parts whose boxes overlap.
    /// </summary>
    /// <exception cref="InputException">A part cannot be read.</exception>
    /// <exception cref="OperationCanceledException">The token of this layout stopped it.</exception>
    public IReadOnlyList<Finding> FindOverlaps() => PartOverlaps.Of(this).ToArray();

    /// <summary>The shadow that coupons kept away from, for drawing.</summary>
    /// <exception cref="InputException">A part cannot be read.</exception>
    public ShadowMap ToShadowMap() =>
        new(Shadow(coupons.Count > 0 ? Ceiling(coupons[0].Coupon, Rules.Gap) : double.PositiveInfinity).Raster);

    private static Box3D MiddleOf(Plate plate)
    {
        var middle = new Vector3D(plate.CentreX, plate.CentreY, 0);
        return new Box3D(middle, middle);
    }

    private static Box3D BoundsOf(IReadOnlyList<PartSurvey> surveys) =>
        new(
            new(surveys.Min(s => s.Bounds.Min.X), surveys.Min(s => s.Bounds.Min.Y), surveys.Min(s => s.Bounds.Min.Z)),
            new(surveys.Max(s => s.Bounds.Max.X), surveys.Max(s => s.Bounds.Max.Y), surveys.Max(s => s.Bounds.Max.Z))
        );

    private Footprint[] Turns(Coupon coupon)
    {
        Footprint[] both = Footprint.BothTurns(coupon.Mesh);
        return Rules.MayTurn ? both : [both[0]];
    }

    private bool FitsHeight(Coupon coupon) => Plate.Height is not { } height || BaseZ + coupon.Bounds.Size.Z <= height;

    private double Ceiling(Coupon coupon, double gap) =>
        Rules.Under ? BaseZ + coupon.Bounds.Size.Z + gap : double.PositiveInfinity;

    private PlateShadow Shadow(double ceiling)
    {
        if (!shadows.TryGetValue(ceiling, out PlateShadow? shadow))
            shadows[ceiling] = shadow = PlateShadow.Of(Plate, Parts, ceiling, IsExact, Cancellation);
        return shadow;
    }

    private RoomSearch Search(Coupon coupon, double gap) =>
        new(Plate, [Shadow(Ceiling(coupon, gap)).Tree, .. couponShadows], gap, Rules.PixelPitch, Cancellation);

    private RoomGoal Goal(PlacementWish wish)
    {
        double middleX = (PartBounds.Min.X + PartBounds.Max.X) / 2,
            middleY = (PartBounds.Min.Y + PartBounds.Max.Y) / 2;
        return wish switch
        {
            NearPointWish point => new RoomGoal(_ => [(point.X, point.Y)], 0, 0.02),
            CornerWish => new RoomGoal(f => MapTargets.Corners(Plate, Rules.Gap, f), 0, 0.02),
            _ => new RoomGoal(_ => [(middleX, middleY)], 10, 0.25),
        };
    }

    private RoomGoal AnyPlace() => new(_ => [(Plate.CentreX, Plate.CentreY)], 0, double.PositiveInfinity);

    private PlacedCoupon At(Coupon coupon, string label, RoomSpot spot) =>
        new(coupon, label, spot.Footprint.Turn, new(spot.X, spot.Y, BaseZ - coupon.Bounds.Min.Z));

    private void Add(PlacedCoupon placed)
    {
        coupons.Add(placed);
        couponShadows.Add(ShadowOf(placed));
    }

    private static PlanarTriangles ShadowOf(PlacedCoupon placed)
    {
        Footprint own = Footprint.BothTurns(placed.Coupon.Mesh)[placed.Turn == 0 ? 0 : 1];
        double[] moved = own.Tree.Triangles.ToArray();
        for (int i = 0; i < moved.Length; i += 2)
            (moved[i], moved[i + 1]) = (moved[i] + placed.Shift.X, moved[i + 1] + placed.Shift.Y);
        return new PlanarTriangles(moved);
    }
}
