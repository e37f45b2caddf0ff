using AutoSweep.Worker.Commands;

return await RootCommandLine.RunAsync(args);
