namespace AutoSweep.Sim.Physics;

/// <summary>A sinusoidal swing of a level: its depth (part of the level, peak) and how often a second.</summary>
/// <param name="Turns">
/// How often it has swung since the start, where its rate is not steady; else rate times time. Rate times time would turn a wander of the rate
/// in its ten-thousandth, an hour from the start, into whole turns.
/// </param>
internal readonly record struct Swing(double Depth, double Hertz, double? Turns = null)
{
    /// <summary>The swing as a detector of a time constant gives it out, averaged over an aperture that ends at a time.</summary>
    public double Seen(double timeSeconds, double timeConstantSeconds, double apertureSeconds)
    {
        if (Depth == 0) return 0;
        var omega = 2 * Math.PI * Hertz;
        var lag = Math.Atan(omega * timeConstantSeconds);
        var half = omega * apertureSeconds / 2;
        var averaged = half == 0 ? 1 : Math.Sin(half) / half;
        return Depth * Math.Cos(lag) * averaged * Math.Sin((2 * Math.PI * (Turns ?? (Hertz * timeSeconds))) - lag - half);
    }
}
