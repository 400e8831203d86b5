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

/// <summary>Random specs in range, most of which no printer could print: for reading, writing and digests.</summary>
internal static class RandomSpecs
{
    internal static Gen<TestObjectSpec> Any =>
        from title in Gen.Elements("", "A", "Demo grey 50 \u00B5m", "no. #7", "1.5 + 2 / 3 : 4 % - ,")
        from process in OrNull(Process)
        from plinth in from t in Between(2, 10)
        from c in Between(0, 1.9)
        select new PlinthSpec { Thickness = t, EdgeChamfer = c }
        from nest in OrNull(Nest)
        from spans in OrNull(from x in Between(8, 300) from y in Between(8, 300) select new SpansSpec { X = x, Y = y })
        from columns in OrNull(Columns)
        from slots in OrNull(from h in List(Between(0.02, 5), 1, 32) select new SlotsSpec { Heights = h })
        from bridge in OrNull(from t in Between(1, 6) select new BridgeSpec { Thickness = t })
        from squeeze in OrNull(
            from h in List(Between(0.05, 5), 1, 20)
            from b in Between(0.1, 5)
            select new SqueezeSpec { Heights = h, Bar = b }
        )
        from pins in OrNull(
            from d in List(Between(0.5, 12), 1, 12)
            from h in Between(3, 30)
            select new PinSpec { Diameters = d, Height = h }
        )
        from walls in OrNull(
            from t in List(Between(0.05, 3), 1, 16)
            from h in Between(1, 40)
            from l in Between(1, 60)
            select new WallSpec
            {
                Thicknesses = t,
                Height = h,
                Length = l,
            }
        )
        from labels in OrNull(
            from h in Between(0.1, 2)
            from s in Between(0.1, 2)
            select new LabelsSpec { Height = h, Stroke = s }
        )
        from axis in Gen.Elements(TiltAxis.X, TiltAxis.Y)
        from angle in Between(-45, 45)
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
            Tilt = new TiltSpec { Axis = axis, Angle = angle },
        };

    private static Gen<ProcessSpec> Process =>
        from pitch in Pair(0.005, 0.5)
        from layer in Between(0.005, 0.5)
        from x in Between(10, 1000)
        from layers in Gen.Choose(0, 100)
        from snap in Gen.Elements(PixelSnap.Pixels, PixelSnap.None)
        select new ProcessSpec
        {
            PixelPitch = pitch,
            LayerHeight = layer,
            Plate = new PlateSize(x, 80, 150),
            BaseLayers = layers,
            Snap = snap,
        };

    private static Gen<NestSpec> Nest =>
        from sizes in List(Between(3, 100), 1, 8)
        from clearances in List(Pair(-1, 2), sizes.Count - 1, sizes.Count - 1)
        from wall in Between(0.4, 10)
        select new NestSpec
        {
            Sizes = sizes,
            Clearances = clearances,
            Wall = wall,
        };

    private static Gen<ColumnsSpec> Columns =>
        from diameters in List(Between(0.05, 6), 1, 64)
        from copies in Gen.Choose(1, 8)
        from lean in Between(0, 60)
        from azimuth in Between(-360, 360)
        select new ColumnsSpec
        {
            Diameters = diameters,
            Copies = copies,
            Lean = lean,
            Azimuth = azimuth,
        };

    private static Gen<double> Between(double low, double high) =>
        Gen.OneOf(Gen.Choose(0, 1_000_000).Select(i => low + (high - low) * i / 1_000_000), Gen.Elements(low, high));

    private static Gen<PerAxis> Pair(double low, double high) =>
        Gen.OneOf(
            Between(low, high).Select(PerAxis.FromDouble),
            from x in Between(low, high)
            from y in Between(low, high)
            select new PerAxis(x, y)
        );

    private static Gen<ValueList<T>> List<T>(Gen<T> entries, int fewest, int most)
        where T : IEquatable<T> =>
        Gen.Choose(fewest, most).SelectMany(n => entries.ArrayOf(n)).Select(a => a.ToValueList());

    private static Gen<T?> OrNull<T>(Gen<T> gen)
        where T : class => Gen.Frequency((4, gen.Select(v => (T?)v)), (1, Gen.Constant<T?>(null)));
}
