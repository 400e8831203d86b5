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
    /// <param name="peg">Size of the peg, mm.</param>
    /// <param name="hole">Size of the hole, mm.</param>
    /// <param name="x">X of its place, or null for anywhere.</param>
    /// <param name="y">Y of its place.</param>
    /// <exception cref="InputException">No coupon has growth, or the place is off the plate.</exception>
    public static JointOverPlate Of(MapResult map, double peg, double hole, double? x = null, double? y = null)
    {
        ArgumentNullException.ThrowIfNull(map);
        GaugeValue[] growth = map.Places.SelectMany(p => p.Point.Values).Where(v => v.Gauge == Gauge.Growth).ToArray();
        if (growth.Length == 0)
            throw new InputException(
                InputIds.Question,
                "No coupon of this print was measured by caliper, so no clearance can be told."
            );
        if (
            x is { } px
            && y is { } py
            && (Math.Abs(px) > map.Options.Width / 2 || Math.Abs(py) > map.Options.Depth / 2)
        )
            throw new InputException(
                InputIds.Question,
                FormattableString.Invariant(
                    $"The place {px},{py} is off the plate: X from {-map.Options.Width / 2} to {map.Options.Width / 2}, Y from {-map.Options.Depth / 2} to {map.Options.Depth / 2} mm."
                )
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

    /// <inheritdoc/>
    public override string ToString() =>
        FormattableString.Invariant(
            $"A {Peg:0.###} mm peg in a {Hole:0.###} mm hole {(Anywhere ? "anywhere on the plate" : "at that place")}: {Clearance.Value:0.000} mm per side ({Clearance.Low:0.000} to {Clearance.High:0.000}), the caliper's own error aside."
        );
}
