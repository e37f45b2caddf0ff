namespace AutoSweep.Instruments.Meters;

/// <summary>A detector bandwidth of a family: the slower, the lower the tones that it reads truly.</summary>
/// <param name="Hertz">The lowest frequency that it passes: the command's argument.</param>
/// <param name="FromToneHertz">The lowest tone for which its error is small enough to use it.</param>
/// <param name="SettleSeconds">How long the detector takes to settle after a change of level.</param>
/// <param name="Source">Where the settling time is published.</param>
public sealed record DriverBandwidth(double Hertz, double FromToneHertz, double SettleSeconds, string Source);
