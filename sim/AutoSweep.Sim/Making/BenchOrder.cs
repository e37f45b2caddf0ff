namespace AutoSweep.Sim.Making;

/// <summary>What a bench to be made should be like.</summary>
internal sealed record BenchOrder
{
    public required string Name { get; init; }

    /// <summary>The profile as the bench file will name it.</summary>
    public required string Profile { get; init; }

    public required int Seed { get; init; }

    public string About { get; init; } = "Invented: every figure of this bench is drawn at random.";

    /// <summary>The front-end amplifier's gain; 1 is none.</summary>
    public double Gain { get; init; } = 20;

    /// <summary>How far the peak may lie from the profile's capacitance, in per cent.</summary>
    public double SpreadPercent { get; init; } = 30;

    /// <summary>How many outputs get the coupled arrangement instead of shunt or series.</summary>
    public int Coupled { get; init; }

    /// <summary>How many get the tapped one.</summary>
    public int Tapped { get; init; }

    /// <summary>How many capacitors lie in the shop's drawers.</summary>
    public int Parts { get; init; }

    /// <summary>Whether to plant faults and to let the hands go wrong.</summary>
    public bool Trouble { get; init; }
}
