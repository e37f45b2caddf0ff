namespace AutoSweep.Sim.Benches;

/// <summary>The bench's LCR meter.</summary>
internal sealed record CapacitanceMeterDefinition
{
    /// <summary>The answer to *IDN?: maker, model, serial number, firmware.</summary>
    public required string Identity { get; init; }

    /// <summary>Error of every capacitance, in per cent of reading.</summary>
    public required double GainErrorPercent { get; init; }

    /// <summary>Standard deviation of a reading in per cent of it.</summary>
    public required double NoisePercentOfReading { get; init; }

    /// <summary>Standard deviation of a small reading, in picofarads.</summary>
    public required double NoisePicofarads { get; init; }

    /// <summary>Standard deviation of the dissipation.</summary>
    public required double DissipationNoise { get; init; }

    /// <summary>The leads' own capacitance.</summary>
    public required double LeadPicofarads { get; init; }

    /// <summary>What the open correction holds, which is not quite that.</summary>
    public required double OpenCorrectionPicofarads { get; init; }

    /// <summary>Wrong answers and wire trouble for tests; none by default.</summary>
    public WireDefinition Wire { get; init; } = new();
}
