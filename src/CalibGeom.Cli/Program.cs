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
int code = CommandHost.Run(args, CommandIo.Console());
foreach (PosixSignalRegistration signal in signals)
    signal.Dispose();
return code;
