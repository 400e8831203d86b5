using System.CommandLine;
using CalibGeom.Cli.Shared;

namespace CalibGeom.Cli.Calipers;

/// <summary><c>calibgeom caliper</c>: the record of a caliper.</summary>
internal static class CaliperCommand
{
    internal static Command Build(CommandIo io)
    {
        var command = new Command(
            "caliper",
            """
            Keep the record of a caliper: readings of gauges and of a repeatability study, and what they tell.

            A readings file names the record: # instrument cal record=cal.caliper.csv

            Example:
              calibgeom caliper add cal.caliper.csv 10.01 10.01 10.02 --jaw outside --gauge 10
              calibgeom caliper show cal.caliper.csv
            """
        );
        command.Subcommands.Add(CaliperAddCommand.Build(io));
        command.Subcommands.Add(CaliperShowCommand.Build(io));
        return command;
    }
}
