using AutoSweep.Core;
using AutoSweep.Core.Journal;

namespace AutoSweep.Worker.Bench;

/// <summary>Tells a lost instrument, which is waited for, from every other fault, which stops the work.</summary>
/// <param name="plan">What is done, on which wiring.</param>
public sealed class LossRule(JobPlan plan)
{
    private readonly SilenceCount _silences = new();

    /// <summary>Notes what is written down: a reading shows that the instruments work.</summary>
    public void Note(JournalEntry entry)
    {
        if (entry.Event is LevelRead or MagnetRead or OutputSurveyed or OutputChecked)
            _silences.Answered();
    }

    /// <summary>The instrument that a fault says is lost.</summary>
    /// <returns>None where the fault is another, or has come back too often.</returns>
    public MissingInstrument? Lost(BenchFaultException fault)
    {
        if (Of(fault.LostResource) is not { } instrument)
            return null;
        return plan.Stages.Count > 0 && _silences.IsFull(fault) ? null : new(instrument, fault.LostResource!, fault);
    }

    private BenchInstrument? Of(string? resource) =>
        resource is null ? null
        : Is(plan.Wiring.Meter, resource) ? BenchInstrument.Meter
        : Is(plan.Wiring.Fixture, resource) ? BenchInstrument.Fixture
        : null;

    private static bool Is(string? wired, string resource) => string.Equals(wired?.Trim(), resource, StringComparison.OrdinalIgnoreCase);
}
