using CalibGeom.Features.Files;

namespace CalibGeom.Cli.Shared.Terminals;

/// <summary>
/// A standard stream that cannot be written, on a full disk or closed, is told from files: what is said beside the
/// result is dropped, a result that cannot be said ends the run with <see cref="UnsaidException"/>.
/// </summary>
/// <param name="inner">The stream.</param>
/// <param name="isResult">Whether it carries the result.</param>
internal sealed class SpokenStream(Stream inner, bool isResult) : Stream
{
    public override bool CanRead => false;

    public override bool CanSeek => false;

    public override bool CanWrite => true;

    public override long Length => throw new NotSupportedException();

    public override long Position
    {
        get => throw new NotSupportedException();
        set => throw new NotSupportedException();
    }

    public override void Flush() => Try(inner.Flush);

    public override void Write(byte[] buffer, int offset, int count) => Write(buffer.AsSpan(offset, count));

    public override void Write(ReadOnlySpan<byte> buffer)
    {
        try
        {
            inner.Write(buffer);
        }
        catch (Exception e) when (IsFull(e))
        {
            Fail(e);
        }
    }

    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

    public override void SetLength(long value) => throw new NotSupportedException();

    private void Try(Action work)
    {
        try
        {
            work();
        }
        catch (Exception e) when (IsFull(e))
        {
            Fail(e);
        }
    }

    // A file that a limit keeps from growing is told as a wrong argument.
    private static bool IsFull(Exception e) =>
        e is IOException or UnauthorizedAccessException or ArgumentOutOfRangeException;

    private void Fail(Exception e)
    {
        if (isResult)
            throw new UnsaidException(e is ArgumentOutOfRangeException ? FileToWrite.TooLarge("it", e) : e);
    }
}
