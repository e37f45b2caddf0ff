namespace AutoSweep.Sim.Benches;

/// <summary>What the clip leads to: a small amplifier, or the meter itself with gain 1.</summary>
internal sealed record FrontEndDefinition
{
    public required double Gain { get; init; }

    public required double InputOhms { get; init; }

    /// <summary>Input and cable.</summary>
    public required double InputPicofarads { get; init; }

    /// <summary>Broadband noise at the input in microvolts rms.</summary>
    public required double NoiseMicrovolts { get; init; }

    /// <summary>Hum that the open clip picks up, in millivolts rms at the input.</summary>
    public required double OpenHumMillivolts { get; init; }

    /// <summary>The bang of a clip that makes contact, in millivolts at the input, as the detector first sees it.</summary>
    public required double ContactMillivolts { get; init; }
}
