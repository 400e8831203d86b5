using CalibGeom.Planar;

namespace CalibGeom.Inspection.Layers;

/// <summary>
/// The pixels of one layer that lie on a flat underside, each with where that began. Reusable; not safe to share
/// between threads.
/// </summary>
internal sealed class FlatLayer
{
    private readonly EdgeTable numbers = new(16);
    private readonly List<(int X, int Y, int Layer)?> origins = [];

    /// <summary>The number of pixels that have not been removed.</summary>
    internal int Count { get; private set; }

    /// <summary>The pixels that have not been removed.</summary>
    internal IEnumerable<(int X, int Y)> Pixels
    {
        get
        {
            for (int i = 0; i < origins.Count; i++)
                if (origins[i] is not null)
                    yield return numbers[i];
        }
    }

    internal void Clear()
    {
        numbers.Clear();
        origins.Clear();
        Count = 0;
    }

    internal void Set((int X, int Y) pixel, (int X, int Y, int Layer) origin)
    {
        int number = numbers.Add(pixel.X, pixel.Y);
        if (number == origins.Count)
            origins.Add(null);
        if (origins[number] is null)
            Count++;
        origins[number] = origin;
    }

    /// <summary>Where the underside in a pixel began; null when there is none.</summary>
    internal (int X, int Y, int Layer)? Find((int X, int Y) pixel) =>
        Count > 0 && numbers.Find(pixel.X, pixel.Y) is var number and >= 0 ? origins[number] : null;

    internal bool Remove((int X, int Y) pixel)
    {
        if (Count == 0 || numbers.Find(pixel.X, pixel.Y) is not (var number and >= 0) || origins[number] is null)
            return false;
        origins[number] = null;
        Count--;
        return true;
    }
}
