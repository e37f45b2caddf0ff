using AutoSweep.Core.Diagnosis;

namespace AutoSweep.Faults;

/// <summary>A planted fault as the diagnosis should name it.</summary>
/// <param name="Fault">Its kind.</param>
/// <param name="Outputs">Where; empty for the whole generator. Two for swapped terminals, and both must be named.</param>
/// <param name="NoiseMultiple">Its effect, in the quantity in which it is seen, over that quantity's standard deviation in a sound generator.</param>
/// <param name="Words">What was planted, for messages.</param>
public sealed record PlantedFaultSize(GeneratorFault Fault, IReadOnlyList<int> Outputs, double NoiseMultiple, string Words);
