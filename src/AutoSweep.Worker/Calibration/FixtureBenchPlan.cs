using AutoSweep.Worker.Bench;

namespace AutoSweep.Worker.Calibration;

/// <summary>What is asked of the fixture and its meter.</summary>
/// <param name="Wiring">Where fixture and capacitance meter are.</param>
/// <param name="AccuracyPercent">The meter's accuracy instead of the driver's figure.</param>
/// <param name="ClockRate">How much faster than real the bench's clock runs.</param>
public sealed record FixtureBenchPlan(BenchWiring Wiring, double? AccuracyPercent, double ClockRate);
