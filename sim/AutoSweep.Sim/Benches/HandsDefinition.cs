using AutoSweep.Sim.Clock;

namespace AutoSweep.Sim.Benches;

/// <summary>What the hands at the clip do.</summary>
internal sealed record HandsDefinition
{
    /// <summary>The usual time with the clip off between two outputs; each pause is between this and twice this.</summary>
    public required double PauseSeconds { get; init; }

    /// <summary>From a beep to the clip coming off.</summary>
    public required double ReactionSeconds { get; init; }

    /// <summary>How long the hands wait for a beep while a worker is connected before they try the next output.</summary>
    public required double PatienceSeconds { get; init; }

    /// <summary>Real time that a worker on a busy machine always gets, however fast the bench's clock runs.</summary>
    /// <value>15 s. A journal line that waits for a busy disk took 2 s here; a beep that comes after the hands went on would count for the next output.</value>
    public static TimeSpan LeastRealPatience { get; } = TimeSpan.FromSeconds(15);

    /// <summary>The patience on a clock.</summary>
    public TimeSpan PatienceOn(SimulatedClock clock) =>
        TimeSpan.FromSeconds(Math.Max(PatienceSeconds, LeastRealPatience.TotalSeconds * clock.Rate));

    public required IReadOnlyList<HandsStep> Survey { get; init; }

    public required IReadOnlyList<HandsStep> Sweep { get; init; }
}
