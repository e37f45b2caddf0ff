using System.CommandLine;
using AutoSweep.Core;
using AutoSweep.Sim.Commands;

var root = new RootCommand("A simulated bench: tone generator, meter, relay fixture and the hands at the clip.")
{
    ServeCommand.Create(), ScoreCommand.Create(), MakeCommand.Create(), PanelCommand.Create(),
};
try
{
    return await root.Parse(args).InvokeAsync(new() { EnableDefaultExceptionHandler = false, ProcessTerminationTimeout = null });
}
catch (BenchFaultException fault)
{
    Console.Error.WriteLine(fault.Message);
    return (int)fault.Kind;
}
