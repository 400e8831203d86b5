namespace CalibGeom.Cli.Tests;

/// <summary>A clock on which everything takes long.</summary>
internal sealed class SlowClock : TimeProvider
{
    private long now;

    public override long GetTimestamp() => Interlocked.Add(ref now, 2 * TimestampFrequency);
}
