namespace AutoSweep.Instruments.Meters;

/// <summary>How a family counts the frequency.</summary>
public sealed record DriverFrequency
{
    /// <summary>The commands that choose function, input range and gate time, in the meter's order.</summary>
    public required IReadOnlyList<DriverCommand> SetUp { get; init; }

    /// <summary>The gate time in seconds.</summary>
    public required double ApertureSeconds { get; init; }

    /// <summary>How long to wait after the function is chosen, before the first count, in seconds.</summary>
    public required double SettleSeconds { get; init; }

    /// <summary>Where the waiting time is published or how it was found.</summary>
    public required string Source { get; init; }

    /// <summary>The query that takes one count.</summary>
    public required string Read { get; init; }
}
