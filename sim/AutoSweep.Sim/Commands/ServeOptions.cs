using AutoSweep.Sim.Benches;
using AutoSweep.Sim.Hands;

namespace AutoSweep.Sim.Commands;

/// <summary>What is asked of a served bench.</summary>
internal sealed record ServeOptions
{
    /// <summary>A bench file, or the name of a shipped one.</summary>
    public required string Bench { get; init; }

    public double ClockRate { get; init; } = 1;

    /// <summary>Replaces the bench's own seed.</summary>
    public int? Seed { get; init; }

    public IReadOnlyList<HandsPhase> Hands { get; init; } = [HandsPhase.Survey, HandsPhase.Sweep];

    /// <summary>0 is any free port.</summary>
    public int MeterPort { get; init; }

    /// <summary>0 is any free port.</summary>
    public int CapacitanceMeterPort { get; init; }

    /// <summary>Faults planted in relays, by number.</summary>
    public IReadOnlyDictionary<int, RelayFault> RelayFaults { get; init; } = new Dictionary<int, RelayFault>();

    /// <summary>Whether the fixture is a pseudo-terminal rather than a TCP port.</summary>
    public bool Pty { get; init; } = true;

    /// <summary>Whether plugs can be pulled by lines on standard input; the fixture's pseudo-terminal then has a name that returns.</summary>
    public bool Unplugging { get; init; }

    public bool Events { get; init; }
}
