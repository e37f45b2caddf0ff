namespace AutoSweep.Sim.Meter;

/// <summary>The meter's settings, with their values after *RST.</summary>
internal sealed record MeterSettings
{
    public static readonly double[] Ranges = [0.1, 1, 10, 100, 750];
    public static readonly double[] Apertures = [0.01, 0.1, 1];

    public MeterFunction Function { get; init; } = MeterFunction.AcVolts;

    /// <summary>The AC range in volts, where it is fixed.</summary>
    public double Range { get; init; } = 0.1;

    public bool AutoRange { get; init; } = true;

    /// <summary>The detector's filter, named by the lowest frequency it passes: 3, 20 or 200 Hz.</summary>
    public int FilterHertz { get; init; } = 20;

    public double FrequencyRange { get; init; } = 0.1;

    public bool FrequencyAutoRange { get; init; } = true;

    /// <summary>The counter's gate.</summary>
    public double GateSeconds { get; init; } = 0.1;

    public TriggerSource Trigger { get; init; } = TriggerSource.Immediate;

    /// <summary>The delay before each sample, or none for the automatic one.</summary>
    public double? DelaySeconds { get; init; }

    public int Triggers { get; init; } = 1;

    public int Samples { get; init; } = 1;

    /// <summary>How long one level sample takes: one mains cycle.</summary>
    public const double LevelApertureSeconds = 0.02;

    public double ApertureSeconds => Function == MeterFunction.Frequency ? GateSeconds : LevelApertureSeconds;

    /// <summary>The automatic delay: what this kind of meter needs to settle (7, 1 and 0.1 s by filter, makers' data in docs).</summary>
    public double SettlingSeconds => FilterHertz switch { 3 => 7, 20 => 1, _ => 0.1 };

    /// <summary>A tenth of that, so that settling leaves 0.005 %.</summary>
    public double TimeConstantSeconds => SettlingSeconds / 10;

    public double DelayInForce => DelaySeconds ?? SettlingSeconds;

    /// <summary>What CONFigure leaves: everything of the trigger and the filter as after *RST (34401A type).</summary>
    public static MeterSettings Configured(MeterFunction function) => new() { Function = function };

    /// <summary>The smallest range that holds a level.</summary>
    public static double RangeFor(double volts) => Ranges.FirstOrDefault(range => range >= volts * (1 - 1e-9), Ranges[^1]);

    /// <summary>The slowest filter that still passes a frequency: 15 Hz takes the 3 Hz filter, 190 Hz the 20 Hz one.</summary>
    public static int FilterFor(double hertz) => hertz < 20 ? 3 : hertz < 200 ? 20 : 200;
}
