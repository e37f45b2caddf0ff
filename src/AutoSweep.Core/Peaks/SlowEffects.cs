namespace AutoSweep.Core.Peaks;

/// <summary>What is believed beforehand of the things beside the tuned tone: hum, drift, and the shape of an unusual network.</summary>
internal static class SlowEffects
{
    // Hum up to 5 % of the peak's level: its square, even from 0 to 5 %, has this mean and, doubled to be safe, this spread.
    internal const double HumPower = 0.0008;
    internal const double HumPowerSd = 0.0015;

    // Where that explains nothing: hum up to 15 % of the peak, as from an open ground.
    internal const double StrongHumPowerSd = 0.02;

    // Up to 1 % a minute of warm-up either way, as a standard deviation.
    internal const double DriftPerMinuteSd = 0.006;

    // The general law's trap may lie at either side, or out of reach; half-way between shunt (0) and series (1) is the neutral guess.
    internal const double Slope = 0.5;
    internal const double SlopeSd = 0.8;

    // How much shallower than complete a trap is (coil losses); 0 is complete.
    internal const double TrapLoss = 0.1;
    internal const double TrapLossSd = 0.2;

    // A reading is never trusted beyond this, whatever noise is told: meter linearity within one range.
    internal const double LeastRelativeNoise = 2e-4;
}
