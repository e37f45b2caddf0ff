namespace AutoSweep.Sim.Physics;

/// <summary>The meter's AC detector: its output follows the input's level with the time constant of the chosen filter.</summary>
/// <remarks>Swings of the level are left out here and added in closed form when a sample is taken (<see cref="Swing"/>).</remarks>
internal sealed class LevelDetector
{
    private TimeSpan at;

    public double TimeConstantSeconds { get; set; } = 0.1;

    /// <summary>The detector's output in volts.</summary>
    public double Volts { get; private set; }

    /// <summary>Lets the detector follow a level that has stood since the last call.</summary>
    public void Follow(double level, TimeSpan until)
    {
        if (until <= at) return;
        Volts = level + ((Volts - level) * Math.Exp(-(until - at).TotalSeconds / TimeConstantSeconds));
        at = until;
    }

    /// <summary>A sudden bang that the filter has to forget.</summary>
    public void Kick(double volts) => Volts += volts;

    /// <summary>Empties the detector, as a change of range or function does.</summary>
    public void Empty() => Volts = 0;
}
