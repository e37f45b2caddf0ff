using System.ComponentModel;
using System.ComponentModel.DataAnnotations;

namespace AutoSweep.Core.Generator;

/// <summary>The pair of gears between the main shaft and a wheel's shaft.</summary>
/// <param name="DrivingTeeth">Teeth of the gear on the main shaft, 1 or more.</param>
/// <param name="DrivenTeeth">Teeth of the gear on the wheel's shaft, 1 or more.</param>
public sealed record GearTrain(
    [property: Description("Teeth of the gear on the main shaft."), Range(1, 10_000)] int DrivingTeeth,
    [property: Description("Teeth of the gear on the wheel's shaft."), Range(1, 10_000)] int DrivenTeeth);
