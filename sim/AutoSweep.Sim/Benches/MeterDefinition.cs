namespace AutoSweep.Sim.Benches;

/// <summary>The bench meter.</summary>
internal sealed record MeterDefinition
{
    /// <summary>The answer to *IDN?: maker, model, serial number, firmware.</summary>
    public required string Identity { get; init; }

    /// <summary>Error of every level, in per cent of reading.</summary>
    public required double GainErrorPercent { get; init; }

    /// <summary>Standard deviation of a sample in per cent of reading.</summary>
    public required double NoisePercentOfReading { get; init; }

    /// <summary>Standard deviation of a sample in per cent of range.</summary>
    public required double NoisePercentOfRange { get; init; }

    /// <summary>Further error below 5 % of range, in per cent of range; it fades in towards zero.</summary>
    public required double LowLevelErrorPercentOfRange { get; init; }

    /// <summary>Steps in a range, 1000000 for six and a half digits.</summary>
    public required double CountsPerRange { get; init; }

    /// <summary>The level at the input from which the counter is right, in millivolts rms.</summary>
    public required double CounterThresholdMillivolts { get; init; }

    /// <summary>Wrong answers and wire trouble for tests; none by default.</summary>
    public WireDefinition Wire { get; init; } = new();
}
