namespace AutoSweep.Sim.CapacitanceMeter;

/// <summary>The LCR meter's settings, with their values after *RST.</summary>
internal sealed record CapacitanceMeterSettings
{
    public double Hertz { get; init; } = 1000;

    public double Volts { get; init; } = 1;

    /// <summary>SHOR, MED or LONG.</summary>
    public string Aperture { get; init; } = "MED";

    public int Averages { get; init; } = 1;

    public bool AutoRange { get; init; } = true;

    public bool OpenCorrection { get; init; }

    public bool ShortCorrection { get; init; }

    /// <summary>INT, BUS, EXT or HOLD.</summary>
    public string Trigger { get; init; } = "INT";

    /// <summary>How long one reading takes (E4980A class, from memory: about 0.006, 0.09 and 0.22 s at 1 kHz).</summary>
    public TimeSpan ReadTime => Averages * TimeSpan.FromSeconds(Aperture switch { "SHOR" => 0.006, "MED" => 0.09, _ => 0.22 });
}
