using System.Diagnostics;
using System.Net.Sockets;
using CalibGeom.Features.Files;

namespace CalibGeom.Features.Tests.Files;

public sealed class RealPathTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("calibgeom-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public void PipesAndSocketsAreToldFromFilesAtOnce()
    {
        if (OperatingSystem.IsWindows())
            return;
        using (var make = Process.Start("mkfifo", At("pipe")))
            make.WaitForExit();
        using var socket = new Socket(AddressFamily.Unix, SocketType.Stream, ProtocolType.Unspecified);
        socket.Bind(new UnixDomainSocketEndPoint(At("socket")));
        File.WriteAllText(At("empty"), "");
        File.WriteAllText(At("full"), "x");
        File.CreateSymbolicLink(At("link"), At("pipe"));
        using var used = new FileStream(At("used"), FileMode.CreateNew, FileAccess.ReadWrite, FileShare.None);
        foreach (string name in new[] { "pipe", "link", "socket" })
        {
            Assert.True(RealPath.IsPipe(At(name)), name);
            using var set = new OutputSet();
            var fault = Assert.Throws<InputException>(() => set.Add(At(name), _ => { }));
            Assert.Contains("it is a pipe", fault.Message, StringComparison.Ordinal);
            fault = Assert.Throws<InputException>(() => AppendedFile.Append(At(name), _ => "x"));
            Assert.Contains("a device or a pipe", fault.Message, StringComparison.Ordinal);
        }
        foreach (string name in new[] { "empty", "full", "used", "absent", "." })
            Assert.False(RealPath.IsPipe(At(name)), name);
    }

    /// <summary>Told by name alone: a test never writes to a device of the machine.</summary>
    [Fact]
    public void ALinkToADeviceIsADevice()
    {
        if (OperatingSystem.IsWindows())
            return;
        File.CreateSymbolicLink(At("near"), At("far"));
        File.CreateSymbolicLink(At("far"), "/dev/null");
        foreach (string path in new[] { At("near"), At("far"), "/dev/null", "/dev/fd/1", "/proc/self/fd/1" })
            Assert.True(RealPath.IsDevice(path), path);
        foreach (string path in new[] { At("none"), folder, "/dev/shm/x" })
            Assert.False(RealPath.IsDevice(path), path);
    }

    private string At(string name) => Path.Combine(folder, name);
}
