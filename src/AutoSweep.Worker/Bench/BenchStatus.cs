using System.Collections.Immutable;
using AutoSweep.Core.Journal;
using AutoSweep.Core.Peaks;
using AutoSweep.Worker.Levelling;

namespace AutoSweep.Worker.Bench;

/// <summary>What the person at the bench should see now: one big state, and what stands beside it.</summary>
/// <remarks>Passing things only; whatever must last is in the job's state.</remarks>
public sealed record BenchStatus
{
    /// <summary>The one big state.</summary>
    public required BenchActivity Activity { get; init; }

    /// <summary>The stage at work.</summary>
    public JobStage? Stage { get; init; }

    /// <summary>The output at the clips.</summary>
    public int? Output { get; init; }

    /// <summary>Its tone in hertz.</summary>
    public double? ToneHertz { get; init; }

    /// <summary>The output that should be clipped next, going by the plan.</summary>
    public int? Next { get; init; }

    /// <summary>The readings of the output at the clips.</summary>
    public ImmutableList<LevelRead> Readings { get; init; } = [];

    /// <summary>The search's best fit so far.</summary>
    public PeakFit? Fit { get; init; }

    /// <summary>The level against its band, and what to do with the magnet; none in other stages.</summary>
    public LevellingView? Levelling { get; init; }

    /// <summary>The instruments that are missing while the work stands still.</summary>
    public ImmutableList<BenchInstrument> Missing { get; init; } = [];

    /// <summary>What to tell the person in words.</summary>
    public string? Message { get; init; }

    /// <summary>The status when an output has been recognised and its reading begins.</summary>
    public BenchStatus Reading(ClippedOutput clipped) => this with
    {
        Activity = BenchActivity.Reading,
        Output = clipped.Output,
        ToneHertz = clipped.ToneHertz,
        Readings = [],
        Fit = null,
        Message = null,
    };

    /// <summary>The status while instruments are missing; nothing of the output in hand stays on the screen.</summary>
    public BenchStatus Paused(IReadOnlyList<MissingInstrument> missing) => this with
    {
        Activity = BenchActivity.Paused,
        Output = null,
        ToneHertz = null,
        Readings = [],
        Fit = null,
        Levelling = null,
        Missing = [.. missing.Select(one => one.Instrument)],
        Message = MissingWords.Of(missing),
    };
}
