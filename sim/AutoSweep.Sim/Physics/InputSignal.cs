namespace AutoSweep.Sim.Physics;

/// <summary>What stands at the meter's input at one time, its parts in volts rms; the parts add in quadrature.</summary>
internal readonly record struct InputSignal
{
    public double ToneVolts { get; init; }

    public double ToneHertz { get; init; }

    public double HumVolts { get; init; }

    public double HumHertz { get; init; }

    public double CrosstalkVolts { get; init; }

    public double NoiseVolts { get; init; }

    /// <summary>The wheel's swing of the tone.</summary>
    public Swing Wheel { get; init; }

    /// <summary>A fault's slow swing of the tone.</summary>
    public Swing Fault { get; init; }

    /// <summary>True rms of the whole, swings left out.</summary>
    public double Volts => Math.Sqrt((ToneVolts * ToneVolts) + UnwantedSquare);

    /// <summary>Everything but the tone.</summary>
    public double UnwantedVolts => Math.Sqrt(UnwantedSquare);

    private double UnwantedSquare => (HumVolts * HumVolts) + (CrosstalkVolts * CrosstalkVolts) + (NoiseVolts * NoiseVolts);

    public InputSignal Amplified(double gain) => this with
    {
        ToneVolts = gain * ToneVolts,
        HumVolts = gain * HumVolts,
        CrosstalkVolts = gain * CrosstalkVolts,
        NoiseVolts = gain * NoiseVolts,
    };
}
