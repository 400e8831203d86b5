using CalibGeom.Meshes;
using CalibGeom.Planar;
using CalibGeom.Slicing;

namespace CalibGeom.Inspection.Layers;

/// <summary>
/// Follows the resin round a growing part. While a layer is printed, the film closes everything open towards it and the
/// plate everything open towards the plate; resin that has no way out sideways, through this layer or any before it, is
/// trapped.
/// </summary>
internal sealed class ResinCheck(PixelGrid grid, double layerHeight)
{
    private readonly UnionFind sets = new();
    private readonly List<Pocket> pockets = [];
    private readonly List<LayerDefect> defects = [];
    private LayerMask? below;
    private int[] belowPockets = [];

    internal IReadOnlyList<LayerDefect> Defects => defects;

    internal void Check(int layer, double z, LayerMask material)
    {
        LayerMask resin = material.Complement();
        int[] ofRun = AddPockets(layer, z, resin);
        List<int> before = Trapped(belowPockets);
        var volumes = before.ConvertAll(p => pockets[p]);
        if (below is not null)
            RunPairs.Visit(resin, below, (run, old) => Join(ofRun[run], belowPockets[old]));
        var open = new HashSet<int>(ofRun.Select(sets.Find));
        for (int i = 0; i < before.Count; i++)
        {
            int now = sets.Find(before[i]);
            if (pockets[now].Outside)
                Report(LayerDefectKind.SuctionCup, volumes[i], layer - 1);
            // What the plate alone closes opens when the part comes off it.
            else if (!open.Contains(now))
                Report(
                    volumes[i].First == 0 ? LayerDefectKind.SuctionCup : LayerDefectKind.SealedVoid,
                    volumes[i],
                    layer - 1
                );
        }
        below = resin;
        belowPockets = ofRun;
    }

    internal void Finish(int lastLayer)
    {
        foreach (int pocket in Trapped(belowPockets))
            Report(LayerDefectKind.SuctionCup, pockets[pocket], lastLayer);
    }

    private int[] AddPockets(int layer, double z, LayerMask resin)
    {
        var pieces = new RunLabels(resin, diagonal: false);
        var ofPiece = new int[pieces.Count];
        Array.Fill(ofPiece, -1);
        var ofRun = new int[resin.RunCount];
        for (int y = 0, run = 0; y < grid.Height; y++)
            foreach (PixelRun r in resin.Row(y))
            {
                int piece = pieces[run];
                if (ofPiece[piece] < 0)
                {
                    ofPiece[piece] = sets.Add();
                    Vector2D m = grid.Middle((r.Start + r.End - 1) / 2, y);
                    pockets.Add(new Pocket(layer, new Vector3D(m.X, m.Y, z), 0, false));
                }
                int pocket = ofRun[run++] = ofPiece[piece];
                bool border = y == 0 || y == grid.Height - 1 || r.Start == 0 || r.End == grid.Width;
                pockets[pocket] = pockets[pocket] with
                {
                    Pixels = pockets[pocket].Pixels + r.Length,
                    Outside = pockets[pocket].Outside || border,
                };
            }
        return ofRun;
    }

    private List<int> Trapped(int[] ofRun) =>
        ofRun.Select(sets.Find).Distinct().Where(p => !pockets[p].Outside).ToList();

    private void Join(int a, int b)
    {
        (int kept, int gone) = sets.Joined(a, b);
        if (kept == gone)
            return;
        Pocket p = pockets[kept],
            q = pockets[gone];
        pockets[kept] = p with { Pixels = p.Pixels + q.Pixels, Outside = p.Outside || q.Outside };
    }

    private void Report(LayerDefectKind kind, Pocket pocket, int last) =>
        defects.Add(
            new LayerDefect(kind, pocket.Place, pocket.First, last, pocket.Pixels * grid.PixelArea * layerHeight)
        );

    private readonly record struct Pocket(int First, Vector3D Place, long Pixels, bool Outside);
}
