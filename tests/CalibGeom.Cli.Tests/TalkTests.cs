using System.Diagnostics;
using CalibGeom.Cli.Shared;
using CalibGeom.Cli.Shared.Terminals;

namespace CalibGeom.Cli.Tests;

/// <summary>A standard stream that is full or closed does not make finished work look undone.</summary>
public class TalkTests
{
    private const string Readings = "feature,value\nbox1.outside.x,8.01\nbox2.inside.x,8.08\n";

    public static TheoryData<int> Rooms => [0, 1, 40];

    [Theory]
    [MemberData(nameof(Rooms))]
    public void TheResultThatCannotBeSaidDoesNotHideThatTheTrialWasAdded(int room)
    {
        using var folder = new TemporaryFolder();
        string log = folder["log.jsonl"];
        string[] args = ["log", "add", folder.Write("print.csv", Readings), "--to", log, "--time", "2", "--rest", "1"];
        foreach (string json in new[] { "", "--json" })
        {
            File.Delete(log);
            (int code, string error) = Run(
                room,
                int.MaxValue,
                [.. args, .. json.Length > 0 ? [json] : Array.Empty<string>()]
            );
            Assert.Equal(ExitCode.Unsaid, code);
            Assert.Contains("all files are written", error, StringComparison.Ordinal);
            Assert.Contains("Do not run it again", error, StringComparison.Ordinal);
            Assert.Single(File.ReadAllLines(log));
        }
    }

    [Theory]
    [MemberData(nameof(Rooms))]
    public void AnswersThatCannotBeSaidAreNotGiven(int room)
    {
        foreach (string line in new[] { "presets witness", "make --object witness --check", "presets nothing --json" })
        {
            (int code, string error) = Run(room, int.MaxValue, line.Split(' '));
            Assert.Equal(ExitCode.BadUse, code);
            Assert.StartsWith("calibgeom ", error, StringComparison.Ordinal);
            Assert.DoesNotContain("all files are written", error, StringComparison.Ordinal);
        }
    }

    [Theory]
    [MemberData(nameof(Rooms))]
    public void WhatIsSaidBesideTheResultMayGoNowhere(int room)
    {
        using var folder = new TemporaryFolder();
        (int code, _) = Run(int.MaxValue, room, "make", "--object", "witness", "-o", folder["x.stl"]);
        Assert.Equal(ExitCode.Done, code);
        Assert.True(File.Exists(folder["x.object.json"]));
        (code, _) = Run(int.MaxValue, room, "make", "--object", "nothing");
        Assert.Equal(ExitCode.BadUse, code);
    }

    /// <summary>A part that can be read once only is copied, and called by its name.</summary>
    [Fact]
    public async Task APartMayComeThroughAPipeAndKeepsItsName()
    {
        if (OperatingSystem.IsWindows())
            return;
        using var folder = new TemporaryFolder();
        byte[] part = File.ReadAllBytes(Path.Combine(Repository.Root, "docs/samples/holder.stl"));
        foreach (int length in new[] { part.Length, part.Length / 2 })
        {
            string pipe = folder[$"pipe{length}"];
            using (var make = Process.Start("mkfifo", pipe))
                await make.WaitForExitAsync();
            Task written = Task.Run(() => File.WriteAllBytes(pipe, part[..length]));
            CliRun run = CliRun.Of("place", pipe, "--plate", "150x90", "-o", folder["plate.stl"]);
            await written;
            Assert.Equal(length == part.Length ? ExitCode.Done : ExitCode.BadUse, run.ExitCode);
            Assert.DoesNotContain(".tmp", run.Error, StringComparison.Ordinal);
            CliRun piped = CliRun.With(part[..length], "place", "-", "--plate", "150x90", "-o", folder["plate.stl"]);
            Assert.Equal(run.ExitCode, piped.ExitCode);
            if (length < part.Length)
                Assert.StartsWith("calibgeom place: standard input declares", piped.Error, StringComparison.Ordinal);
        }
    }

    private static (int Code, string Error) Run(int outRoom, int errorRoom, params string[] args)
    {
        using var said = new MemoryStream();
        using var output = new StreamWriter(new SpokenStream(new FullDisk(Stream.Null, outRoom), isResult: true));
        using var error = new StreamWriter(new SpokenStream(new FullDisk(said, errorRoom), isResult: false));
        output.AutoFlush = error.AutoFlush = true;
        var io = new CommandIo
        {
            Out = output,
            Error = error,
            OpenInput = () => Stream.Null,
            OpenOutput = () => Stream.Null,
        };
        int code = CommandHost.Run(args, io);
        output.AutoFlush = false;
        return (code, System.Text.Encoding.UTF8.GetString(said.ToArray()));
    }

    /// <summary>A stream with room for so many bytes.</summary>
    private sealed class FullDisk(Stream inner, int room) : MemoryStream
    {
        private int left = room;

        public override void Write(ReadOnlySpan<byte> buffer)
        {
            if (buffer.Length > left)
                throw new IOException("No space left on device");
            left -= buffer.Length;
            inner.Write(buffer);
        }
    }
}
