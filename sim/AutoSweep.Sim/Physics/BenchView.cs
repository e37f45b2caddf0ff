namespace AutoSweep.Sim.Physics;

/// <summary>The meter's input and detector at one time.</summary>
/// <param name="Time">The time.</param>
/// <param name="Signal">What stands at the input.</param>
/// <param name="DetectorVolts">The detector's output, swings left out.</param>
/// <param name="TimeConstantSeconds">The detector's time constant.</param>
/// <param name="SinceDisturbed">Time since clip or relays last changed.</param>
/// <param name="Random">The noise of readings.</param>
internal readonly record struct BenchView(
    TimeSpan Time, InputSignal Signal, double DetectorVolts, double TimeConstantSeconds, TimeSpan SinceDisturbed, Random Random);
