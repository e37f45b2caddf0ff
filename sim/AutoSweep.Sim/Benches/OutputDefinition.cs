namespace AutoSweep.Sim.Benches;

/// <summary>One output of the simulated generator.</summary>
internal sealed record OutputDefinition
{
    /// <summary>The terminal's number in the profile.</summary>
    public required int Number { get; init; }

    public required SourceDefinition Source { get; init; }

    /// <summary>The filter, or none.</summary>
    public FilterDefinition? Filter { get; init; }

    /// <summary>The capacitor that is in the filter until the hands take it off.</summary>
    public AgedCapacitorDefinition? Aged { get; init; }

    /// <summary>Hum at the terminal in millivolts rms, whatever the capacitance.</summary>
    public required double HumMillivolts { get; init; }

    /// <summary>How much the level swings as the wheel turns, in per cent of the level, peak.</summary>
    public required double WobblePercent { get; init; }

    public CrosstalkDefinition? Crosstalk { get; init; }

    /// <summary>Its magnet rod, or none: then nothing moves it.</summary>
    public RodDefinition? Rod { get; init; }
}
