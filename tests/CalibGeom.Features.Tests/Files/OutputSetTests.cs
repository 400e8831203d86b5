using CalibGeom.Features.Files;

namespace CalibGeom.Features.Tests.Files;

[Collection(Alone)]
public sealed class OutputSetTests : IDisposable
{
    /// <summary>Unfinished files are known to the whole process: what removes them runs alone.</summary>
    internal const string Alone = "unfinished files";

    private readonly string folder = Directory.CreateTempSubdirectory("outputs").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void CommittedFilesStandAloneInTheFolder()
    {
        File.WriteAllText(At("a"), "old");
        using (var set = new OutputSet())
        {
            Add(set, "a", "new a");
            Add(set, "b", "new b");
            Assert.Equal("old", File.ReadAllText(At("a")));
            set.Commit();
        }
        Assert.Equal([("a", "new a"), ("b", "new b")], Contents());
    }

    [Fact]
    public void WithoutACommitNothingIsLeftBehind()
    {
        File.WriteAllText(At("a"), "old");
        using (var set = new OutputSet())
        {
            Add(set, "a", "new");
            Assert.Throws<IOException>(() => set.Add(At("b"), _ => throw new IOException("disk full")));
        }
        Assert.Equal([("a", "old")], Contents());
    }

    [Fact]
    public void ARuleDecidesWhatMayBeWrittenOver()
    {
        File.WriteAllText(At("a"), "old");
        using var set = new OutputSet(path => File.Exists(path) ? "It stays." : null);
        Add(set, "b", "new");
        Assert.Equal("It stays.", Assert.Throws<InputException>(() => Add(set, "a", "new")).Message);
        set.Commit();
        Assert.Equal([("a", "old"), ("b", "new")], Contents());
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    public void AMoveThatFailsPutsEverythingBack(int failing)
    {
        File.WriteAllText(At("a"), "old a");
        File.WriteAllText(At("b"), "old b");
        int moves = 0;
        using (
            var set = new OutputSet(
                (from, to) =>
                {
                    if (++moves == failing)
                        throw new UnauthorizedAccessException("not yours");
                    File.Move(from, to);
                }
            )
        )
        {
            Add(set, "a", "new a");
            Add(set, "c", "new c");
            Add(set, "b", "new b");
            Assert.Throws<UnauthorizedAccessException>(set.Commit);
        }
        Assert.Equal(failing, moves);
        Assert.Equal([("a", "old a"), ("b", "old b")], Contents());
    }

    [Fact]
    public void AWriterThatFailsAtAnyByteLeavesTheOldFile()
    {
        File.WriteAllText(At("a"), "old");
        for (int bytes = 0; bytes < 20; bytes++)
        {
            using (var set = new OutputSet())
                Assert.Throws<IOException>(() =>
                    set.Add(
                        At("a"),
                        stream =>
                        {
                            stream.Write(new byte[bytes]);
                            throw new IOException("disk full");
                        }
                    )
                );
            Assert.Equal([("a", "old")], Contents());
        }
    }

    [Fact]
    public void TheFirstFileIsMovedLast()
    {
        var order = new List<string>();
        using var set = new OutputSet(
            (from, to) =>
            {
                order.Add(Path.GetFileName(to));
                File.Move(from, to);
            }
        );
        Add(set, "mesh", "m");
        Add(set, "table", "t");
        set.Commit();
        Assert.Equal(["table", "mesh"], order);
    }

    [Fact]
    public void ALinkStaysALinkAndAModeStaysAMode()
    {
        if (OperatingSystem.IsWindows())
            return;
        Directory.CreateDirectory(At("real"));
        File.WriteAllText(At("real/a"), "old");
        File.SetUnixFileMode(At("real/a"), UnixFileMode.UserRead | UnixFileMode.UserWrite);
        File.CreateSymbolicLink(At("link"), At("real/a"));
        Directory.CreateSymbolicLink(At("other"), At("real"));
        using (var set = new OutputSet())
        {
            Add(set, "link", "new");
            Assert.Throws<InputException>(() => Add(set, "other/a", "again"));
            set.Commit();
        }
        Assert.NotNull(new FileInfo(At("link")).LinkTarget);
        Assert.Equal("new", File.ReadAllText(At("real/a")));
        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(At("real/a")));
        Assert.True(RealPath.Same(At("other/a"), At("link")));
    }

    [Fact]
    public void WhatIsOpenIsWrittenToAndNotReplaced()
    {
        if (!OperatingSystem.IsLinux())
            return;
        // Never a device of the machine: a fault here would replace it. No file can be made beside an open descriptor.
        string path = At("open");
        using (var open = new FileStream(path, FileMode.Create, FileAccess.ReadWrite, FileShare.ReadWrite))
        using (var set = new OutputSet())
        {
            set.Add($"/proc/self/fd/{open.SafeFileHandle.DangerousGetHandle()}", stream => stream.Write("kept"u8));
            Assert.Equal("kept", File.ReadAllText(path));
            set.Commit();
        }
        Assert.Equal("kept", File.ReadAllText(path));
        Assert.Equal([path], Directory.GetFiles(folder));
    }

    [Fact]
    public void ADeviceThatIsNotThereIsSaid()
    {
        if (!OperatingSystem.IsLinux())
            return;
        using var set = new OutputSet();
        var fault = Assert.Throws<InputException>(() => set.Add("/proc/self/fd/2000000", _ => { }));
        Assert.Contains("there is no such device. Name a file", fault.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData(" ")]
    [InlineData("no/such/folder/a")]
    [InlineData(".")]
    public void WhatCannotBeWrittenIsSaid(string name)
    {
        using var set = new OutputSet();
        string path = name.Trim().Length == 0 ? name : At(name);
        var fault = Assert.Throws<InputException>(() => set.Add(path, _ => { }));
        Assert.Contains("ame", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void LinksInACircleAreSaid()
    {
        if (OperatingSystem.IsWindows())
            return;
        File.CreateSymbolicLink(At("a"), At("b"));
        File.CreateSymbolicLink(At("b"), At("a"));
        Assert.Contains(
            "circle",
            Assert.Throws<InputException>(() => RealPath.Of(At("a"))).Message,
            StringComparison.Ordinal
        );
    }

    private string At(string name) => Path.Combine(folder, name);

    private void Add(OutputSet set, string name, string text) =>
        set.Add(At(name), stream => stream.Write(System.Text.Encoding.UTF8.GetBytes(text)));

    private IEnumerable<(string, string)> Contents() =>
        Directory
            .EnumerateFiles(folder)
            .Order(StringComparer.Ordinal)
            .Select(f => (Path.GetFileName(f), File.ReadAllText(f)));
}
