namespace AutoSweep.Core.Generator;

/// <summary>The pair of gears between the main shaft and a wheel's shaft.</summary>
/// <param name="DrivingTeeth">Teeth of the gear on the main shaft, 1 or more.</param>
/// <param name="DrivenTeeth">Teeth of the gear on the wheel's shaft, 1 or more.</param>
public sealed record GearTrain(int DrivingTeeth, int DrivenTeeth);
