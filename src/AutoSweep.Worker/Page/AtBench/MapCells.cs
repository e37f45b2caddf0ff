using AutoSweep.Core.Journal;
using AutoSweep.Worker.Bench;

namespace AutoSweep.Worker.Page.AtBench;

/// <summary>The map of all outputs.</summary>
public static class MapCells
{
    /// <summary>A cell an output, in the generator's order; none before a job is open.</summary>
    /// <param name="state">The job.</param>
    /// <param name="status">What goes on.</param>
    /// <param name="stage">The stage that the map is about.</param>
    public static IReadOnlyList<MapCell> Of(JobState? state, BenchStatus status, JobStage stage) => state?.Profile is not { } profile
        ? []
        : [.. profile.Outputs.Select(output => Cell(output.Number, OutputStands.Of(state, status, stage, output.Number), status))];

    // What is at the clips now is not the next one any more, though the plan still has it so.
    private static MapCell Cell(int output, OutputStand stand, BenchStatus status) =>
        new(output, stand, status.Next == output && stand == OutputStand.Open);
}
