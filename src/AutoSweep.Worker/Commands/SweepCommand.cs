using System.CommandLine;
using AutoSweep.Core.Journal;
using AutoSweep.Worker.Bench;

namespace AutoSweep.Worker.Commands;

/// <summary><c>autosweep sweep</c>.</summary>
public static class SweepCommand
{
    /// <summary>The command.</summary>
    public static Command Build() => StageCommand.Build(
        "sweep",
        "Finds the capacitance at which each filtered output is loudest: take the old capacitor off, clip the fixture in its place, "
        + "wait for the beep, next one. Writes DIR/sweeps.csv.",
        [Cautions.SpinningGenerator, Cautions.OldCapacitors],
        JobStage.Sweep);
}
