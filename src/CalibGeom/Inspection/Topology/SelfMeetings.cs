using CalibGeom.Meshes;

namespace CalibGeom.Inspection.Topology;

/// <summary>All pairs of triangles of a welded mesh that cross or touch, in order of their numbers.</summary>
internal sealed class SelfMeetings
{
    private readonly List<(int First, int Second)> crossings = [];
    private readonly List<(int First, int Second)> contacts = [];

    internal SelfMeetings(
        TriangleMesh welded,
        ExactMesh exact,
        bool[] leftOut,
        Action<double> progress,
        CancellationToken cancellation = default
    )
    {
        int[] triangles = welded.Triangles.ToArray();
        int[] items = [.. Enumerable.Range(0, welded.TriangleCount).Where(t => !leftOut[t])];
        if (items.Length < 2)
            return;
        cancellation.ThrowIfCancellationRequested();
        var meeting = new TriangleMeeting(exact, triangles);
        cancellation.ThrowIfCancellationRequested();
        IReadOnlyList<Action<Func<int, int, bool>>> parts = new MeetingSearch(welded, items, cancellation).Parts;
        cancellation.ThrowIfCancellationRequested();
        var found = new List<(Meeting Meeting, int First, int Second)>[parts.Count];
        int done = 0;
        var reporting = new Lock();
        Parallel.For(
            0,
            parts.Count,
            new ParallelOptions { CancellationToken = cancellation },
            part =>
            {
                List<(Meeting, int, int)> own = found[part] = [];
                parts[part]
                    (
                        (i, j) =>
                        {
                            Meeting how = meeting.Of(i, j);
                            if (how != Meeting.None)
                                own.Add((how, Math.Min(i, j), Math.Max(i, j)));
                            return own.Count < MeshTopology.MostPairs && !cancellation.IsCancellationRequested;
                        }
                    );
                lock (reporting)
                    progress(++done / (double)parts.Count);
            }
        );
        // The loop itself throws only where it hears of a stop before its last part has ended early.
        cancellation.ThrowIfCancellationRequested();
        foreach ((Meeting how, int first, int second) in found.SelectMany(f => f).Take(MeshTopology.MostPairs))
            (how == Meeting.Cross ? crossings : contacts).Add((first, second));
        crossings.Sort();
        contacts.Sort();
    }

    internal IReadOnlyList<(int First, int Second)> Crossings => crossings;

    internal IReadOnlyList<(int First, int Second)> Contacts => contacts;

    internal bool Capped => crossings.Count + contacts.Count >= MeshTopology.MostPairs;
}
