using CalibGeom.Cli;

return CommandHost.Run(args, CommandIo.Console());
