using CalibGeom.Features.Files;

namespace CalibGeom.Features.Tests.Files;

/// <summary>Copies of what can be read once; a signal takes them away.</summary>
[Collection(OutputSetTests.Alone)]
public class TemporaryCopyTests
{
    [Fact]
    public void ItIsWholeItsOwnersAloneAndGoneWhenDisposed()
    {
        string path;
        using (TemporaryCopy copy = TemporaryCopy.Of(new MemoryStream([1, 2, 3]), "standard input"))
        {
            path = copy.Path;
            Assert.Equal([1, 2, 3], File.ReadAllBytes(path));
            if (!OperatingSystem.IsWindows())
                Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(path));
        }
        Assert.False(File.Exists(path));
    }

    [Fact]
    public void MoreThanTheLimitIsRefused()
    {
        InputException e = Assert.Throws<InputException>(() =>
            TemporaryCopy.Of(new MemoryStream(new byte[(2 << 20) + 1]), "standard input", 2 << 20)
        );
        Assert.Contains("larger than 2 MiB", e.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void ASignalTakesUnfinishedFilesAway()
    {
        string folder = Directory.CreateTempSubdirectory("unfinished").FullName;
        using (var set = new OutputSet())
        {
            set.Add(Path.Combine(folder, "a"), s => s.WriteByte(1));
            Assert.Single(Directory.GetFiles(folder));
            UnfinishedFiles.Remove();
            Assert.Empty(Directory.GetFiles(folder));
        }
        Directory.Delete(folder, recursive: true);
    }
}
