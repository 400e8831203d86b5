using CalibGeom.Verification.Trends;
using CalibGeom.Verification.Uncertainty;

namespace CalibGeom.Verification.Maps;

/// <summary>The clearance to expect in a joint of one's own, at a place or anywhere on the plate. Immutable.</summary>
/// <param name="Peg">Size of the peg, mm.</param>
/// <param name="Hole">Size of the hole, mm.</param>
/// <param name="Anywhere">Whether it may stand anywhere; else at the place asked for.</param>
/// <param name="Clearance">mm per side: at the place with its 95 % interval; anywhere from the least lower to the
/// greatest upper end over the plate.</param>
public sealed record JointOverPlate(double Peg, double Hole, bool Anywhere, Amount Clearance)
{
    /// <summary>The joint on a plate that was mapped; needs coupons measured by caliper.</summary>
    /// <param name="map">The map.</param>
    /// <param name="peg">Size of the peg, mm, above 0 and at most 1000.</param>
    /// <param name="hole">Size of the hole, mm, above 0 and at most 1000.</param>
    /// <param name="x">X of its place, mm, -1000 to 1000, or null for anywhere.</param>
    /// <param name="y">Y of its place; given where X is.</param>
    /// <exception cref="ArgumentException">A number is out of range, or only one of X and Y is given.</exception>
    /// <exception cref="InputException">No coupon has growth, or the place is off the plate.</exception>
    public static JointOverPlate Of(MapResult map, double peg, double hole, double? x = null, double? y = null)
    {
        ArgumentNullException.ThrowIfNull(map);
        Require.Positive(peg, 1000, "size of the peg", "mm", nameof(peg));
        Require.Positive(hole, 1000, "size of the hole", "mm", nameof(hole));
        RequirePlace(map.Options, x, y);
        // A felt fit is a range in which growth moves unseen: no clearance follows from it to a hundredth.
        GaugeValue[] growth = map
            .Places.SelectMany(p => p.Point.Values)
            .Where(v => v.Gauge == Gauge.Growth && !v.Felt)
            .ToArray();
        if (growth.Length == 0)
            throw new InputException(
                InputIds.Question,
                "No coupon of this print was measured by caliper, so no clearance can be told. Measure box widths of each."
            );
        double mean = (hole - peg) / 2 - 2 * growth.Average(v => v.Value),
            reach =
                2
                * Coverage.NormalFactor
                * Math.Sqrt(growth.Average(v => v.Uncertainty * v.Uncertainty) / growth.Length);
        Amount At(double ax, double ay)
        {
            Amount change = map.ClearanceChangeAt(ax, ay);
            double half = Math.Sqrt(Math.Pow((change.High - change.Low) / 2, 2) + reach * reach);
            return new Amount(mean + change.Value, mean + change.Value - half, mean + change.Value + half);
        }
        if (x is { } sx && y is { } sy)
            return new JointOverPlate(peg, hole, false, At(sx, sy));
        Amount[] all = OneExposure.Grid(map.Options, 11).Select(p => At(p.X, p.Y)).ToArray();
        return new JointOverPlate(peg, hole, true, new Amount(mean, all.Min(a => a.Low), all.Max(a => a.High)));
    }

    private static void RequirePlace(MapOptions options, double? x, double? y)
    {
        if (x is null != y is null)
            throw new ArgumentException(
                "A place needs both X and Y; give neither for anywhere on the plate.",
                x is null ? nameof(x) : nameof(y)
            );
        if (x is not { } px || y is not { } py)
            return;
        Require.Within(px, -1000, 1000, "place along X", "mm", nameof(x));
        Require.Within(py, -1000, 1000, "place along Y", "mm", nameof(y));
        if (Math.Abs(px) > options.Width / 2 || Math.Abs(py) > options.Depth / 2)
            throw new InputException(
                InputIds.Question,
                FormattableString.Invariant(
                    $"The place {px},{py} is off the plate: X from {-options.Width / 2} to {options.Width / 2}, Y from {-options.Depth / 2} to {options.Depth / 2} mm."
                )
            );
    }

    /// <inheritdoc/>
    public override string ToString() =>
        FormattableString.Invariant(
            $"A {Peg:0.###} mm peg in a {Hole:0.###} mm hole {(Anywhere ? "anywhere on the plate" : "at that place")}: {Clearance.Value:0.000} mm per side ({Clearance.Low:0.000} to {Clearance.High:0.000}), the caliper's own error aside."
        );
}
