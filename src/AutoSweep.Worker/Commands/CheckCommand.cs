using System.CommandLine;
using AutoSweep.Core.Journal;
using AutoSweep.Worker.Bench;

namespace AutoSweep.Worker.Commands;

/// <summary><c>autosweep check</c>.</summary>
public static class CheckCommand
{
    /// <summary>The command.</summary>
    public static Command Build() => StageCommand.Build(
        "check",
        "Reads the level of every fitted output with its parts soldered in and compares it with what its sweep predicted: a difference that noise does not "
        + "explain is flagged. Needs no fixture.",
        [Cautions.SpinningGenerator],
        JobStage.Check);
}
