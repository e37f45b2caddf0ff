namespace AutoSweep.Sim.Physics;

/// <summary>A sinusoidal swing of a level: its depth (part of the level, peak) and how often a second.</summary>
internal readonly record struct Swing(double Depth, double Hertz)
{
    /// <summary>The swing as a detector of a time constant gives it out, averaged over an aperture that ends at a time.</summary>
    public double Seen(double timeSeconds, double timeConstantSeconds, double apertureSeconds)
    {
        if (Depth == 0) return 0;
        var omega = 2 * Math.PI * Hertz;
        var lag = Math.Atan(omega * timeConstantSeconds);
        var half = omega * apertureSeconds / 2;
        var averaged = half == 0 ? 1 : Math.Sin(half) / half;
        return Depth * Math.Cos(lag) * averaged * Math.Sin((omega * timeSeconds) - lag - half);
    }
}
