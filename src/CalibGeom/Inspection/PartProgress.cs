namespace CalibGeom.Inspection;

/// <summary>Reports a part of a work as the piece of the whole that it is.</summary>
internal sealed class PartProgress(IProgress<double> whole, double from, double to) : IProgress<double>
{
    public void Report(double value) => whole.Report(from + (to - from) * value);
}
