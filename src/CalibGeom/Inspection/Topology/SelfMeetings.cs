using CalibGeom.Meshes;

namespace CalibGeom.Inspection.Topology;

/// <summary>All pairs of triangles of a welded mesh that cross or touch, in order of their numbers.</summary>
internal sealed class SelfMeetings
{
    private readonly List<(int First, int Second)> crossings = [];
    private readonly List<(int First, int Second)> contacts = [];

    internal SelfMeetings(TriangleMesh welded, ExactMesh exact, bool[] degenerate, Action<double> progress)
    {
        int[] triangles = welded.Triangles.ToArray();
        int[] items = [.. Enumerable.Range(0, welded.TriangleCount).Where(t => !degenerate[t])];
        if (items.Length < 2)
            return;
        var meeting = new TriangleMeeting(exact, triangles);
        TriangleBoxes
            .TreeOf(welded, items)
            .Pairs((i, j) => Add(meeting.Of(items[i], items[j]), items[i], items[j]), progress);
        crossings.Sort();
        contacts.Sort();
    }

    internal IReadOnlyList<(int First, int Second)> Crossings => crossings;

    internal IReadOnlyList<(int First, int Second)> Contacts => contacts;

    internal bool Capped => crossings.Count + contacts.Count >= MeshTopology.MostPairs;

    private bool Add(Meeting meeting, int a, int b)
    {
        if (meeting == Meeting.None)
            return true;
        (meeting == Meeting.Cross ? crossings : contacts).Add((Math.Min(a, b), Math.Max(a, b)));
        return !Capped;
    }
}
