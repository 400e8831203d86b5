using CalibGeom.Solids;
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
using CalibGeom.TestObjects.Specs;
using FsCheck;
using FsCheck.Fluent;

namespace CalibGeom.Tests.TestObjects;

/// <summary>Random specs of objects that someone might print: most, not all, keep to the design rules.</summary>
internal static class PrintableSpecs
{
    internal static Gen<TestObjectSpec> Any =>
        from title in Gen.Elements("", "DEMO GREY", "R2/50 \u00B5M", "#7: +5%", "A-B.C,D")
        from process in OrNull(Process, 2)
        from plinth in from t in Between(1.5, 4)
        from c in Between(0, 1.2)
        select new PlinthSpec { Thickness = t, EdgeChamfer = c }
        from nest in OrNull(Nest, 6)
        from spans in OrNull(
            from x in Between(16, 50)
            from y in Between(16, 50)
            select new SpansSpec { X = x, Y = y },
            3
        )
        from columns in OrNull(Columns, 5)
        from slots in OrNull(Slots, 3)
        from bridge in OrNull(from t in Between(1, 4) select new BridgeSpec { Thickness = t }, 2)
        from squeeze in OrNull(Squeeze, 3)
        from pins in OrNull(Pins, 1)
        from walls in OrNull(Walls, 1)
        from labels in OrNull(
            from h in Between(0.2, 0.6)
            from s in Between(0.28, 0.6)
            select new LabelsSpec { Height = h, Stroke = s },
            3
        )
        from tilt in Tilt
        select new TestObjectSpec
        {
            Title = title,
            Process = process,
            Plinth = plinth,
            Nest = nest,
            Spans = spans,
            Columns = columns,
            Slots = slots,
            Bridge = bridge,
            Squeeze = squeeze,
            Pins = pins,
            Walls = walls,
            Labels = labels,
            Tilt = tilt,
        };

    internal static Gen<NestSpec> Nest =>
        from first in Between(6.2, 12)
        from ratios in Between(1.33, 1.6).ListOf(3)
        from count in Gen.Choose(1, 4)
        let sizes = ratios
            .Take(count - 1)
            .Aggregate(new List<double> { first }, (list, ratio) => [.. list, list[^1] * ratio])
        from clearances in Clearance.ArrayOf(sizes.Count - 1)
        from wall in Between(0.8, 1.5)
        from band in Between(4, 7)
        from below in Between(0, 2)
        select new NestSpec
        {
            Sizes = sizes.ToValueList(),
            Clearances = clearances.ToValueList(),
            Wall = wall,
            GaugeBand = band,
            PocketDepth = band + 0.5 + below,
        };

    internal static Gen<ColumnsSpec> Columns =>
        from thinnest in Between(0.2, 0.8)
        from count in Gen.Choose(1, 3)
        from ratio in Between(1.05, 1.4)
        from copies in Gen.Choose(1, 2)
        from height in Between(1.5, 8)
        from head in Between(0.3, 1.6)
        from pitch in Between(2.8, 5)
        from lean in Gen.OneOf(Gen.Constant(0.0), Between(0, 45))
        from azimuth in Between(-360, 360)
        select new ColumnsSpec
        {
            Diameters = Enumerable.Range(0, count).Select(i => thinnest * Math.Pow(ratio, i)).ToValueList(),
            Copies = copies,
            Height = height,
            HeadDiameter = head,
            Pitch = pitch,
            Lean = lean,
            Azimuth = azimuth,
        };

    internal static Gen<double> Between(double low, double high) =>
        Gen.Choose(0, 1_000_000).Select(i => low + (high - low) * i / 1_000_000);

    private static Gen<PerAxis> Clearance =>
        from x in Between(-0.15, 0.3)
        from y in Between(-0.15, 0.3)
        from same in Gen.Elements(true, false)
        select same ? new PerAxis(x, x) : new PerAxis(x, y);

    private static Gen<ProcessSpec> Process =>
        from x in Between(0.02, 0.06)
        from y in Between(0.02, 0.06)
        from layer in Between(0.02, 0.1)
        from snap in Gen.Elements(PixelSnap.Pixels, PixelSnap.None)
        select new ProcessSpec
        {
            PixelPitch = new PerAxis(x, y),
            LayerHeight = layer,
            Snap = snap,
            BaseLayers = 4,
        };

    private static Gen<SlotsSpec> Slots =>
        from steps in Between(0.03, 0.2).ListOf(5)
        from count in Gen.Choose(1, 5)
        select new SlotsSpec
        {
            Heights = steps.Take(count).Select((_, i) => 0.1 + steps.Take(i + 1).Sum()).ToValueList(),
        };

    private static Gen<SqueezeSpec> Squeeze =>
        from steps in Between(0.03, 0.2).ListOf(6)
        from count in Gen.Choose(1, 6)
        from bar in Between(0.1, 0.6)
        select new SqueezeSpec
        {
            Heights = steps.Take(count).Select((_, i) => 0.07 + steps.Take(i + 1).Sum()).ToValueList(),
            Bar = bar,
        };

    private static Gen<PinSpec> Pins =>
        from first in Between(0.8, 2)
        from step in Between(0.3, 1.5)
        from count in Gen.Choose(1, 4)
        from height in Between(3.5, 8)
        select new PinSpec
        {
            Diameters = Enumerable.Range(0, count).Select(i => first + i * step).ToValueList(),
            Height = height,
        };

    private static Gen<WallSpec> Walls =>
        from first in Between(0.08, 0.4)
        from step in Between(0.04, 0.2)
        from count in Gen.Choose(1, 6)
        from height in Between(2, 6)
        select new WallSpec
        {
            Thicknesses = Enumerable.Range(0, count).Select(i => first + i * step).ToValueList(),
            Height = height,
        };

    private static Gen<TiltSpec> Tilt =>
        from axis in Gen.Elements(TiltAxis.X, TiltAxis.Y)
        from angle in Gen.OneOf(Gen.Constant(0.0), Between(-14, 14))
        select new TiltSpec { Axis = axis, Angle = angle };

    private static Gen<T?> OrNull<T>(Gen<T> group, int often)
        where T : class => Gen.Frequency((often, group.Select(g => (T?)g)), (1, Gen.Constant<T?>(null)));
}
