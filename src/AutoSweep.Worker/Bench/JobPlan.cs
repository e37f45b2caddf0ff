using AutoSweep.Core.Journal;
using AutoSweep.Worker.Levelling;

namespace AutoSweep.Worker.Bench;

/// <summary>What the worker is to do with a job.</summary>
public sealed record JobPlan
{
    /// <summary>How the bench is wired.</summary>
    public required BenchWiring Wiring { get; init; }

    /// <summary>The stages, in order.</summary>
    public required IReadOnlyList<JobStage> Stages { get; init; }

    /// <summary>Whether outputs are recognised by their tone; otherwise the person is asked for one after the other.</summary>
    public required bool HandsFree { get; init; }

    /// <summary>Whether an instrument that is not there yet is waited for.</summary>
    public bool WaitsForBench { get; init; }

    /// <summary>How outputs are levelled, where that is one of the stages.</summary>
    public LevellingOptions Levelling { get; init; } = new();

    /// <summary>How many times faster than the wall clock the bench's clock runs; 1 on a real bench.</summary>
    public double ClockRate { get; init; } = 1;
}
