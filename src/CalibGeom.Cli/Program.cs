using CalibGeom.Cli.Shared;

return CommandHost.Run(args, CommandIo.Console());
