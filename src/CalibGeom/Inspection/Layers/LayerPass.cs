using System.Collections.Concurrent;
using System.Runtime.ExceptionServices;
using CalibGeom.Meshes;
using CalibGeom.Slicing;

namespace CalibGeom.Inspection.Layers;

/// <summary>
/// All checks, fed with blocks of layers from the plate upward. The layers of a block are drawn on all cores, then the
/// checks, which go from layer to layer, run beside each other.
/// </summary>
internal sealed class LayerPass
{
    private readonly PixelGrid grid;
    private readonly LayerSettings settings;
    private readonly BetweenLayers between;
    private readonly IslandCheck islands = new();
    private readonly OverhangCheck overhangs;
    private readonly ResinCheck resin;
    private readonly WidthCheck widths;
    private readonly List<LayerSummary> layers = [];
    private readonly List<LayerDefect> lost = [];
    private readonly ConcurrentBag<LayerDrawing> pens = [];
    private readonly CancellationToken cancellation;
    private DrawnLayer? below;

    internal LayerPass(
        TriangleMesh mesh,
        LayerSlicer slicer,
        PixelGrid grid,
        LayerSettings settings,
        CancellationToken cancellation
    )
    {
        (this.grid, this.settings, this.cancellation) = (grid, settings, cancellation);
        between = new BetweenLayers(mesh, slicer, grid);
        overhangs = new OverhangCheck(grid, settings);
        resin = new ResinCheck(grid, settings.LayerHeight);
        widths = new WidthCheck(grid, settings.MinimumPixels, settings.LayerHeight);
    }

    internal void Add(IReadOnlyList<LayerContours> block)
    {
        var drawn = new DrawnLayer[block.Count];
        Parallel.For(
            0,
            drawn.Length,
            new ParallelOptions { CancellationToken = cancellation },
            () => pens.TryTake(out LayerDrawing? known) ? known : new LayerDrawing(grid, widths.Limit),
            (i, _, pen) =>
            {
                drawn[i] = pen.Draw(block[i]);
                return pen;
            },
            pens.Add
        );
        DrawnLayer? first = below;
        Together(
            () => Each(drawn, first, (one, under) => islands.Check(one.Index, one.Z, one.Mask, under.Mask)),
            () => Each(drawn, first, (one, under) => overhangs.Check(one.Index, one.Z, one.Mask, under.Mask)),
            () => Alone(drawn, one => resin.Check(one.Index, one.Z, one.Mask)),
            () => Alone(drawn, one => widths.Check(one.Index, one.Z, one.Thin)),
            () => Between(drawn, first)
        );
        layers.AddRange(drawn.Select(d => d.Summary));
        below = drawn[^1];
    }

    internal LayerReport Finish(Box3D bounds)
    {
        resin.Finish(layers.Count - 1);
        lost.AddRange(between.Check(layers.Count, below?.Mask, null));
        return new LayerReport(
            settings,
            bounds,
            layers,
            [.. islands.Defects, .. overhangs.Defects, .. resin.Defects, .. widths.Defects, .. lost]
        );
    }

    private void Between(DrawnLayer[] drawn, DrawnLayer? under)
    {
        foreach (DrawnLayer one in drawn)
        {
            cancellation.ThrowIfCancellationRequested();
            lost.AddRange(between.Check(one.Index, under?.Mask, one.Mask));
            under = one;
        }
    }

    /// <summary>On all cores; what goes wrong comes out as it is.</summary>
    private static void Together(params Action[] checks)
    {
        try
        {
            Parallel.Invoke(checks);
        }
        catch (AggregateException e)
        {
            ExceptionDispatchInfo.Throw(e.InnerExceptions[0]);
        }
    }

    private void Alone(DrawnLayer[] drawn, Action<DrawnLayer> check)
    {
        foreach (DrawnLayer one in drawn)
        {
            cancellation.ThrowIfCancellationRequested();
            check(one);
        }
    }

    private void Each(DrawnLayer[] drawn, DrawnLayer? under, Action<DrawnLayer, DrawnLayer> check)
    {
        foreach (DrawnLayer one in drawn)
        {
            cancellation.ThrowIfCancellationRequested();
            if (under is not null)
                check(one, under);
            under = one;
        }
    }
}
