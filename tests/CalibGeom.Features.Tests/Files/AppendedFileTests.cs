using System.Text;
using CalibGeom.Features.Files;

namespace CalibGeom.Features.Tests.Files;

/// <summary>A file that is appended to, under bad disks and many writers.</summary>
public sealed class AppendedFileTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("calibgeom-").FullName;

    private string Text => Path.Combine(folder, "a.txt");

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void ADiskThatIsFullAfterAnyByteLeavesTheFileAsItWas()
    {
        byte[] before = Encoding.UTF8.GetBytes("{\"time\":2.5}\n"),
            added = Encoding.UTF8.GetBytes("{\"time\":2.7}\n");
        for (int room = 0; room <= added.Length; room++)
        {
            using var disk = new FullDisk(before, room);
            if (room < added.Length)
                Assert.Throws<IOException>(() => AppendedFile.Write(disk, added, disk.Flush));
            else
                AppendedFile.Write(disk, added, disk.Flush);
            Assert.Equal(room < added.Length ? before : [.. before, .. added], disk.ToArray());
        }
    }

    [Fact]
    public void ADiskThatFailsToKeepWhatWasWrittenLeavesTheFileAsItWas()
    {
        using var disk = new FullDisk([1, 2, 3], 100);
        Assert.Throws<IOException>(() => AppendedFile.Write(disk, [4, 5], () => throw new IOException("no flush")));
        Assert.Equal([1, 2, 3], disk.ToArray());
    }

    /// <summary>Each writer adds one more than there are: with a row lost, a number would stand twice.</summary>
    [Fact]
    public void WritersAtOnceLoseNothing()
    {
        Parallel.For(
            0,
            40,
            _ =>
                AppendedFile.Append(
                    Text,
                    s => FormattableString.Invariant($"{new StreamReader(s).ReadToEnd().Count(c => c == '\n')}\n")
                )
        );
        Assert.Equal(Enumerable.Range(0, 40).Select(i => FormattableString.Invariant($"{i}")), File.ReadAllLines(Text));
    }

    [Theory]
    [InlineData("", "more\n")]
    [InlineData("some\n", "some\nmore\n")]
    [InlineData("some", "some\nmore\n")]
    [InlineData("\uFEFFsome\r\n", "\uFEFFsome\r\nmore\n")]
    public void WhatStandsInItStays(string before, string after)
    {
        File.WriteAllBytes(Text, Encoding.UTF8.GetBytes(before));
        AppendedFile.Append(Text, _ => "more\n");
        Assert.Equal(Encoding.UTF8.GetBytes(after), File.ReadAllBytes(Text));
    }

    [Fact]
    public void WhatIsRefusedLeavesNoFileBehind()
    {
        Assert.Throws<InputException>(() => AppendedFile.Append(Text, _ => throw new InputException("no")));
        Assert.False(File.Exists(Text));
        Assert.Throws<InputException>(() => AppendedFile.Append(folder, _ => ""));
        Assert.Throws<InputException>(() => AppendedFile.Append(Path.Combine(folder, "none", "a.txt"), _ => ""));
    }

    /// <summary>A disk with room for so many bytes more.</summary>
    private sealed class FullDisk : MemoryStream
    {
        private readonly long most;

        internal FullDisk(byte[] before, int room)
        {
            base.Write(before, 0, before.Length);
            most = before.Length + room;
        }

        public override void Write(byte[] buffer, int offset, int count)
        {
            int fits = (int)Math.Min(count, most - Position);
            base.Write(buffer, offset, fits);
            if (fits < count)
                throw new IOException("No space left on device");
        }

        public override void Write(ReadOnlySpan<byte> buffer) => Write(buffer.ToArray(), 0, buffer.Length);
    }
}
