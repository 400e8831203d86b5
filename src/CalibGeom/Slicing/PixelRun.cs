namespace CalibGeom.Slicing;

/// <summary>Pixels of one row that follow each other.</summary>
/// <param name="Start">The first column.</param>
/// <param name="End">The column after the last.</param>
public readonly record struct PixelRun(int Start, int End)
{
    /// <summary>The number of pixels.</summary>
    public int Length => End - Start;
}
