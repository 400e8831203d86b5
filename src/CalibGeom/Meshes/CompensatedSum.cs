namespace CalibGeom.Meshes;

/// <summary>Neumaier's compensated summation.</summary>
internal struct CompensatedSum
{
    private double sum;
    private double lost;

    internal readonly double Total => sum + lost;

    internal void Add(double value)
    {
        double next = sum + value;
        lost += Math.Abs(sum) >= Math.Abs(value) ? sum - next + value : value - next + sum;
        sum = next;
    }
}
