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

    public required IReadOnlyList<HandsStep> Survey { get; init; }

    public required IReadOnlyList<HandsStep> Sweep { get; init; }
}
