namespace AutoSweep.Sim.Benches;

/// <summary>The relay fixture.</summary>
internal sealed record FixtureDefinition
{
    public required string Serial { get; init; }

    /// <summary>Clips, leads and open contacts.</summary>
    public required double StrayPicofarads { get; init; }

    public required double LossTangent { get; init; }

    /// <summary>From a coil's drop to an open contact.</summary>
    public required double ReleaseMilliseconds { get; init; }

    /// <summary>From a coil's pull to the end of bouncing.</summary>
    public required double BounceMilliseconds { get; init; }

    public required IReadOnlyList<RelayDefinition> Relays { get; init; }
}
