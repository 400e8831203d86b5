using System.Runtime.InteropServices;
using CalibGeom.Cli.Shared;
using CalibGeom.Features.Files;

// Whoever ends this program finds no temporary files of it; the signal then does what it always does.
PosixSignalRegistration[] signals =
[
    .. new[] { PosixSignal.SIGINT, PosixSignal.SIGTERM, PosixSignal.SIGHUP }.Select(signal =>
        PosixSignalRegistration.Create(signal, _ => UnfinishedFiles.Remove())
    ),
];

// A file that grows beyond the limit of the shell (ulimit -f) is told in words, as a full disk is.
const PosixSignal FileSizeExceeded = (PosixSignal)25;
if (!OperatingSystem.IsWindows())
    signals = [.. signals, PosixSignalRegistration.Create(FileSizeExceeded, signal => signal.Cancel = true)];
int code = CommandHost.Run(args, CommandIo.Console());

// Held to the end of the process: a signal is answered on another thread, which may come to it after the work.
GC.KeepAlive(signals);
return code;
