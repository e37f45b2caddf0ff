using System.CommandLine;

namespace AutoSweep.Worker.Commands;

/// <summary><c>autosweep serve</c>: for now the host alone, with a connected bench.</summary>
public static class ServeCommand
{
    /// <summary>The command.</summary>
    public static Command Build() => StageCommand.Build(
        "serve",
        "Connects the bench of a job, keeps it connected and checked until Ctrl-C, and measures nothing.",
        [Cautions.SpinningGenerator]);
}
